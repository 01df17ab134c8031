<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>AboutDialog</name>
    <message>
        <source>About Toe &amp; Throat</source>
        <translation>Acerca de Toe &amp; Throat</translation>
    </message>
    <message>
        <source>A trainer for the fillet weld gauge. It keeps everything on this computer and sends nothing anywhere.</source>
        <translation>Un entrenador para la galga de soldaduras en ángulo. Lo guarda todo en este equipo y no envía nada a ninguna parte.</translation>
    </message>
    <message>
        <source>Settings</source>
        <translation>Preferencias</translation>
    </message>
    <message>
        <source>Calls on record</source>
        <translation>Dictámenes registrados</translation>
    </message>
    <message>
        <source>Reports of trouble</source>
        <translation>Informes de fallos</translation>
    </message>
    <message>
        <source>Versions</source>
        <translation>Versiones</translation>
    </message>
    <message>
        <source>Copy versions and places</source>
        <translation>Copiar versiones y rutas</translation>
    </message>
    <message>
        <source>Show folder</source>
        <translation>Mostrar carpeta</translation>
    </message>
    <message>
        <source>Show the folder of: {what}</source>
        <translation>Mostrar la carpeta de: {what}</translation>
    </message>
</context>
<context>
    <name>Afterwards</name>
    <message>
        <source>Last time this program ended without closing: someone or something ended it, or the power went. Calls on record are kept.</source>
        <translation>La última vez el programa acabó sin cerrarse: alguien o algo lo detuvo, o se fue la luz. Los dictámenes registrados se conservan.</translation>
    </message>
    <message>
        <source>Last time this program crashed, and its report could not be written. Calls on record are kept.</source>
        <translation>La última vez el programa falló, y no se pudo escribir el informe. Los dictámenes registrados se conservan.</translation>
    </message>
    <message>
        <source>Last time this program crashed. Calls on record are kept. A report that helps to mend it lies at {file}</source>
        <translation>La última vez el programa falló. Los dictámenes registrados se conservan. Hay un informe que ayuda a arreglarlo en {file}</translation>
    </message>
    <message>
        <source>Your settings could not be read ({reason}), so the usual ones hold. Their file is {file}</source>
        <translation>No se pudieron leer sus preferencias ({reason}), así que valen las habituales. Su archivo es {file}</translation>
    </message>
    <message>
        <source>Your settings were damaged, so the usual ones hold. What the file held is kept as {file}</source>
        <translation>Sus preferencias estaban dañadas, así que valen las habituales. Lo que contenía el archivo se guarda como {file}</translation>
    </message>
    <message>
        <source>Coupons that an earlier start left unsaved wait in the coupon shop.</source>
        <translation>En el taller de cupones esperan cupones que quedaron sin guardar de una vez anterior.</translation>
    </message>
    <message>
        <source>Go there</source>
        <translation>Ir allí</translation>
    </message>
    <message>
        <source>A sitting was begun here and is not handed in. All that was called is kept; the proctor&apos;s passphrase opens it again.</source>
        <translation>Aquí se empezó una prueba que no se ha entregado. Todo lo dictaminado está guardado; la frase de quien vigila la abre de nuevo.</translation>
    </message>
    <message>
        <source>Show folder</source>
        <translation>Mostrar carpeta</translation>
    </message>
</context>
<context>
    <name>AskStep</name>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
</context>
<context>
    <name>Band</name>
    <message>
        <source>Send this message away</source>
        <translation>Cerrar este mensaje</translation>
    </message>
</context>
<context>
    <name>Bench</name>
    <message>
        <source>Loupe on the tip</source>
        <translation>Lupa en la punta</translation>
    </message>
    <message>
        <source>Loupe on the spur</source>
        <translation>Lupa en el espolón</translation>
    </message>
    <message>
        <source>T</source>
        <translation>En T</translation>
    </message>
    <message>
        <source>skewed T</source>
        <translation>En T oblicua</translation>
    </message>
    <message>
        <source>plates {size}</source>
        <translation>chapas de {size}</translation>
    </message>
    <message>
        <source>base {base}, upright {upright}</source>
        <translation>base {base}, montante {upright}</translation>
    </message>
    <message>
        <source>root opening {size}</source>
        <translation>separación en la raíz {size}</translation>
    </message>
    <message>
        <source>tight fit</source>
        <translation>sin separación</translation>
    </message>
    <message>
        <source>Seat the leaf and state what it shows.</source>
        <translation>Asiente la hoja y diga qué muestra.</translation>
    </message>
    <message>
        <source>State the largest leaf that this weld meets, and the next, which it doesn&apos;t.</source>
        <translation>Diga la hoja más grande que cumple este cordón, y la siguiente, que ya no cumple.</translation>
    </message>
    <message>
        <source>Judge this weld against its callout.</source>
        <translation>Juzgue este cordón según lo indicado.</translation>
    </message>
    <message>
        <source>Say what is wrong with how this leaf was placed, if anything is.</source>
        <translation>Diga qué falla en cómo se puso esta hoja, si algo falla.</translation>
    </message>
    <message>
        <source>Convex</source>
        <translation>Convexa</translation>
    </message>
    <message>
        <source>Flat</source>
        <translation>Plana</translation>
    </message>
    <message>
        <source>Hollow</source>
        <translation>Cóncava</translation>
    </message>
    <message>
        <source>Touch</source>
        <translation>Contacto</translation>
    </message>
    <message>
        <source>Daylight</source>
        <translation>Luz</translation>
    </message>
    <message>
        <source>Held off</source>
        <translation>Apartada</translation>
    </message>
    <message>
        <source>Not seated</source>
        <translation>Sin asentar</translation>
    </message>
    <message>
        <source>Accept</source>
        <translation>Aceptar</translation>
    </message>
    <message>
        <source>Add weld metal</source>
        <translation>Aportar metal</translation>
    </message>
    <message>
        <source>Dress back</source>
        <translation>Rebajar</translation>
    </message>
    <message>
        <source>Refer</source>
        <translation>Remitir</translation>
    </message>
    <message>
        <source>leg edge</source>
        <translation>canto de cateto</translation>
    </message>
    <message>
        <source>throat edge</source>
        <translation>canto de garganta</translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation>Cateto en la base</translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation>Cateto en el montante</translation>
    </message>
    <message>
        <source>Throat</source>
        <translation>Garganta</translation>
    </message>
    <message>
        <source>{mark}, {edge}</source>
        <translation>{mark}, {edge}</translation>
    </message>
    <message>
        <source>spatter</source>
        <translation>salpicadura</translation>
    </message>
    <message>
        <source>long edge</source>
        <translation>canto largo</translation>
    </message>
    <message>
        <source>end edge</source>
        <translation>canto del extremo</translation>
    </message>
    <message>
        <source>arc</source>
        <translation>arco</translation>
    </message>
    <message>
        <source>back</source>
        <translation>dorso</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>weld face</source>
        <translation>cara del cordón</translation>
    </message>
    <message>
        <source>lip on the base</source>
        <translation>labio en la base</translation>
    </message>
    <message>
        <source>lip on the upright</source>
        <translation>labio en el montante</translation>
    </message>
    <message>
        <source>groove in the base</source>
        <translation>ranura en la base</translation>
    </message>
    <message>
        <source>groove in the upright</source>
        <translation>ranura en el montante</translation>
    </message>
    <message>
        <source>plate</source>
        <translation>chapa</translation>
    </message>
    <message>
        <source>tip</source>
        <translation>punta</translation>
    </message>
    <message>
        <source>spur</source>
        <translation>espolón</translation>
    </message>
    <message>
        <source>{leaf} on {steel}</source>
        <translation>{leaf} con {steel}</translation>
    </message>
    <message>
        <source> and </source>
        <translation> y </translation>
    </message>
    <message>
        <source>in the air</source>
        <translation>en el aire</translation>
    </message>
</context>
<context>
    <name>BenchScreen</name>
    <message>
        <source>Section of the weld</source>
        <translation>Sección del cordón</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Banco</translation>
    </message>
    <message>
        <source>That help is not allowed in this sitting.</source>
        <translation>Esa ayuda no se permite en esta prueba.</translation>
    </message>
    <message>
        <source>It is on record. PgDn takes the next from the tray.</source>
        <translation>Está registrado. AvPág toma el siguiente de la bandeja.</translation>
    </message>
    <message>
        <source>There is no other coupon that way in this tray.</source>
        <translation>Por ahí no hay más cupones en esta bandeja.</translation>
    </message>
    <message>
        <source>The call could not be kept</source>
        <translation>No se pudo guardar el dictamen</translation>
    </message>
    <message>
        <source>The debrief is shown all the same, but the call is not in the records.

{file}: {reason}

Free some space there, or make the folder writable, and judge the coupon again.</source>
        <translation>El repaso se muestra igualmente, pero el dictamen no consta en el registro.

{file}: {reason}

Libere espacio ahí, o permita escribir en la carpeta, y juzgue el cupón de nuevo.</translation>
    </message>
</context>
<context>
    <name>Bringing</name>
    <message>
        <source>Results (*{suffix});;All files (*)</source>
        <translation>Resultados (*{suffix});;Todos los archivos (*)</translation>
    </message>
    <message>
        <source>Bring in results</source>
        <translation>Incorporar resultados</translation>
    </message>
    <message>
        <source>No results there</source>
        <translation>Ahí no hay resultados</translation>
    </message>
    <message>
        <source>The names of result files end with {suffix}.</source>
        <translation>Los nombres de los archivos de resultados terminan en {suffix}.</translation>
    </message>
    <message>
        <source>Stopped before its turn. Bring it in again.</source>
        <translation>Se detuvo antes de su turno. Vuelva a incorporarlo.</translation>
    </message>
</context>
<context>
    <name>BroughtDialog</name>
    <message>
        <source>Results that came in: {count}</source>
        <translation>Resultados incorporados: {count}</translation>
    </message>
    <message>
        <source>What came of each file</source>
        <translation>Qué ha sido de cada archivo</translation>
    </message>
    <message>
        <source>Try another passphrase...</source>
        <translation>Probar otra frase de contraseña...</translation>
    </message>
</context>
<context>
    <name>CallPanel</name>
    <message>
        <source>Make the call</source>
        <translation>Dictamine</translation>
    </message>
    <message>
        <source>What is the face?</source>
        <translation>¿Cómo es la cara?</translation>
    </message>
    <message>
        <source>What does the leaf show at this seat?</source>
        <translation>¿Qué muestra la hoja en este apoyo?</translation>
    </message>
    <message>
        <source>Disposition of the weld</source>
        <translation>Disposición del cordón</translation>
    </message>
    <message>
        <source>How sure are you?</source>
        <translation>¿Qué seguridad tiene?</translation>
    </message>
    <message>
        <source>How sure are you?  S, with Shift less sure</source>
        <translation>¿Qué seguridad tiene?  S; con Mayús, menos</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>sin decir</translation>
    </message>
    <message>
        <source>Face</source>
        <translation>Cara</translation>
    </message>
    <message>
        <source>What the leaf shows</source>
        <translation>Lo que muestra la hoja</translation>
    </message>
    <message>
        <source>meets the callout</source>
        <translation>cumple lo indicado</translation>
    </message>
    <message>
        <source>undersize or undercut</source>
        <translation>falta tamaño o hay mordedura</translation>
    </message>
    <message>
        <source>overlap or excess</source>
        <translation>solape o exceso</translation>
    </message>
    <message>
        <source>cannot be judged so</source>
        <translation>no puede juzgarse así</translation>
    </message>
    <message>
        <source>Disposition</source>
        <translation>Disposición</translation>
    </message>
    <message>
        <source>{share} %</source>
        <translation>{share} %</translation>
    </message>
</context>
<context>
    <name>CaptionBar</name>
    <message>
        <source>Back (Left, Page Up)</source>
        <translation>Atrás (izquierda, RePág)</translation>
    </message>
    <message>
        <source>On (Right, Space, Page Down)</source>
        <translation>Adelante (derecha, Espacio, AvPág)</translation>
    </message>
    <message>
        <source>End the talk (Esc)</source>
        <translation>Terminar la charla (Esc)</translation>
    </message>
</context>
<context>
    <name>ChecksTable</name>
    <message>
        <source>Checks</source>
        <translation>Controles</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Control</translation>
    </message>
    <message>
        <source>Is, {unit}</source>
        <translation>{unit}</translation>
    </message>
    <message>
        <source>Limit</source>
        <translation>Límite</translation>
    </message>
    <message>
        <source>Margin</source>
        <translation>Margen</translation>
    </message>
    <message>
        <source>Verdict</source>
        <translation>Resultado</translation>
    </message>
</context>
<context>
    <name>ClaimView</name>
    <message>
        <source>What is claimed</source>
        <translation>Qué se afirma</translation>
    </message>
</context>
<context>
    <name>Class</name>
    <message>
        <source>Line {n}: {words}</source>
        <translation>Línea {n}: {words}</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Add a learner</source>
        <translation>Añadir un aprendiz</translation>
    </message>
    <message>
        <source>Change a learner</source>
        <translation>Cambiar un aprendiz</translation>
    </message>
    <message>
        <source>The name stays on this machine. In sittings, in results and on the school&apos;s server there is the code alone.</source>
        <translation>El nombre se queda en este equipo. En las pruebas, en los resultados y en el servidor de la escuela solo está el código.</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Añadir</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Cambiar</translation>
    </message>
    <message>
        <source>Name here</source>
        <translation>Nombre aquí</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Código</translation>
    </message>
    <message>
        <source>New code</source>
        <translation>Código nuevo</translation>
    </message>
    <message>
        <source>Groups</source>
        <translation>Grupos</translation>
    </message>
    <message>
        <source>Add many learners</source>
        <translation>Añadir varios aprendices</translation>
    </message>
    <message>
        <source>A line for each: a name, then a code if they have one. Whoever has none gets one that is made. Paste from a spreadsheet, or type.</source>
        <translation>Una línea por persona: el nombre y, si lo tiene, el código. A quien no tenga se le hace uno. Pegue de una hoja de cálculo o escriba.</translation>
    </message>
    <message>
        <source>Names and codes</source>
        <translation>Nombres y códigos</translation>
    </message>
    <message>
        <source>Pia; HK4-7TK
Odo</source>
        <translation>Pía; HK4-7TK
Odo</translation>
    </message>
    <message>
        <source>What is wrong</source>
        <translation>Qué está mal</translation>
    </message>
    <message>
        <source>Into the group</source>
        <translation>En el grupo</translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>{learners} to be added.</source>
        <translation>Se añadirán {learners}.</translation>
    </message>
    <message>
        <source>Here already, and passed over: {count}.</source>
        <translation>Ya están aquí, y se saltan: {count}.</translation>
    </message>
    <message>
        <source>New group</source>
        <translation>Grupo nuevo</translation>
    </message>
    <message>
        <source>Rename the group</source>
        <translation>Cambiar el nombre del grupo</translation>
    </message>
    <message>
        <source>A class, a course, a shift. A learner can be in several.</source>
        <translation>Una clase, un curso, un turno. Un aprendiz puede estar en varios.</translation>
    </message>
    <message>
        <source>Rename</source>
        <translation>Cambiar el nombre</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>There is a group of that name.</source>
        <translation>Ya hay un grupo con ese nombre.</translation>
    </message>
    <message>
        <source>Erase for good</source>
        <translation>Borrar para siempre</translation>
    </message>
    <message>
        <source>What is erased</source>
        <translation>Qué se borra</translation>
    </message>
    <message>
        <source>I have read the list, and nothing of it is needed any more</source>
        <translation>He leído la lista y nada de ella hace falta ya</translation>
    </message>
</context>
<context>
    <name>ClassDealing</name>
    <message>
        <source>Added: {learners}</source>
        <translation>Añadidos: {learners}</translation>
    </message>
    <message numerus="yes">
        <source>{name}: %n call(s)</source>
        <translation>
            <numerusform>{name}: %n dictamen</numerusform>
            <numerusform>{name}: %n dictámenes</numerusform>
        </translation>
    </message>
    <message>
        <source>Erase {learners}</source>
        <translation>Borrar {learners}</translation>
    </message>
    <message>
        <source>Erase what is due</source>
        <translation>Borrar lo vencido</translation>
    </message>
    <message>
        <source>It goes for good: from the logbook, from its log and dated backups, and with the sealed files on this machine that are named below. What was saved or carried elsewhere isn&apos;t reached; nor is the school&apos;s server, where an instructor erases a code: toe-and-throat school URL --erase CODE</source>
        <translation>Se borra para siempre: del cuaderno, de su registro y de sus copias fechadas, y con los archivos sellados de este equipo que se nombran abajo. Lo que se guardó o se llevó a otro sitio no se alcanza; tampoco el servidor de la escuela, donde un instructor borra un código: toe-and-throat school URL --erase CODE</translation>
    </message>
    <message numerus="yes">
        <source>Begun and not handed in: %n sitting(s), sealed in {folder}. Whose doesn&apos;t show before it is resumed, so nothing of that is erased.</source>
        <translation>
            <numerusform>Sin entregar: %n prueba empezada, sellada en {folder}. De quién es no se ve hasta que se reanuda; por eso no se borra.</numerusform>
            <numerusform>Sin entregar: %n pruebas empezadas, selladas en {folder}. De quién son no se ve hasta que se reanudan; por eso no se borran.</numerusform>
        </translation>
    </message>
    <message>
        <source>Some files could not be erased</source>
        <translation>Algunos archivos no se pudieron borrar</translation>
    </message>
    <message>
        <source>Remove the group {name}?</source>
        <translation>¿Quitar el grupo {name}?</translation>
    </message>
    <message>
        <source>Its learners and what they did stay; they are in the group no more.</source>
        <translation>Sus aprendices y lo que hicieron se quedan; solo dejan de estar en el grupo.</translation>
    </message>
    <message>
        <source>Remove it</source>
        <translation>Quitarlo</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Add learners from a table</source>
        <translation>Añadir aprendices de una tabla</translation>
    </message>
    <message>
        <source>Tables (*.csv *.txt *.tsv);;All files (*)</source>
        <translation>Tablas (*.csv *.txt *.tsv);;Todos los archivos (*)</translation>
    </message>
    <message>
        <source>It can&apos;t be read</source>
        <translation>No se puede leer</translation>
    </message>
    <message>
        <source>Save the class as a table</source>
        <translation>Guardar la clase como tabla</translation>
    </message>
    <message>
        <source>Nobody here has a code.</source>
        <translation>Nadie de aquí tiene código.</translation>
    </message>
    <message>
        <source>Save code slips</source>
        <translation>Guardar papeletas con códigos</translation>
    </message>
    <message>
        <source>It could not be written</source>
        <translation>No se pudo escribir</translation>
    </message>
    <message>
        <source>Written: {file}</source>
        <translation>Escrito: {file}</translation>
    </message>
    <message>
        <source>That can&apos;t be</source>
        <translation>Eso no puede ser</translation>
    </message>
</context>
<context>
    <name>ClassPage</name>
    <message>
        <source>Try again</source>
        <translation>Intentar de nuevo</translation>
    </message>
    <message>
        <source>Kept how long</source>
        <translation>Cuánto se guarda</translation>
    </message>
    <message>
        <source>School&apos;s server</source>
        <translation>Servidor</translation>
    </message>
    <message>
        <source>The class</source>
        <translation>La clase</translation>
    </message>
    <message>
        <source>Sittings: class</source>
        <translation>Pruebas: clase</translation>
    </message>
</context>
<context>
    <name>ClassResults</name>
    <message>
        <source>Where results are read from</source>
        <translation>De dónde se leen los resultados</translation>
    </message>
    <message>
        <source>This machine</source>
        <translation>Este equipo</translation>
    </message>
    <message>
        <source>School&apos;s server</source>
        <translation>Servidor de la escuela</translation>
    </message>
    <message>
        <source>Sitting</source>
        <translation>Prueba</translation>
    </message>
    <message>
        <source>No sitting yet</source>
        <translation>Aún no hay pruebas</translation>
    </message>
    <message>
        <source>Bring in results...</source>
        <translation>Incorporar resultados...</translation>
    </message>
    <message>
        <source>Result files from a stick or a folder, several at once; or drop them here</source>
        <translation>Archivos de resultados de una memoria o una carpeta, varios a la vez; o suéltelos aquí</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportar</translation>
    </message>
    <message>
        <source>This table as it is shown (CSV)...</source>
        <translation>Esta tabla tal como se ve (CSV)...</translation>
    </message>
    <message>
        <source>Every answer of this sitting (CSV)...</source>
        <translation>Todas las respuestas de esta prueba (CSV)...</translation>
    </message>
    <message>
        <source>Statements of this sitting (xAPI)...</source>
        <translation>Declaraciones de esta prueba (xAPI)...</translation>
    </message>
    <message>
        <source>Sheet of the class to print (PDF)...</source>
        <translation>Hoja de la clase para imprimir (PDF)...</translation>
    </message>
    <message>
        <source>Sheet of the class for screen readers (HTML)...</source>
        <translation>Hoja de la clase para lectores de pantalla (HTML)...</translation>
    </message>
    <message>
        <source>Learners</source>
        <translation>Aprendices</translation>
    </message>
    <message>
        <source>Coupons</source>
        <translation>Cupones</translation>
    </message>
    <message>
        <source>Wrong together</source>
        <translation>Fallados juntos</translation>
    </message>
    <message>
        <source>Pictures</source>
        <translation>Gráficos</translation>
    </message>
    <message>
        <source>Who is ready</source>
        <translation>Quién está listo</translation>
    </message>
    <message>
        <source>Find...</source>
        <translation>Buscar...</translation>
    </message>
    <message>
        <source>Papers of the sitting</source>
        <translation>Exámenes de la prueba</translation>
    </message>
    <message>
        <source>Open the paper</source>
        <translation>Abrir el examen</translation>
    </message>
    <message>
        <source>Coupons of the sitting</source>
        <translation>Cupones de la prueba</translation>
    </message>
    <message>
        <source>Coupons got wrong together</source>
        <translation>Cupones fallados juntos</translation>
    </message>
    <message>
        <source>Open the logbook</source>
        <translation>Abrir el cuaderno</translation>
    </message>
    <message numerus="yes">
        <source>%n paper(s)</source>
        <translation>
            <numerusform>%n examen</numerusform>
            <numerusform>%n exámenes</numerusform>
        </translation>
    </message>
    <message>
        <source>No two coupons were got wrong by the same learner.</source>
        <translation>Ningún aprendiz falló dos cupones a la vez.</translation>
    </message>
    <message>
        <source>Nothing can be read: see above.</source>
        <translation>No se puede leer nada: véase arriba.</translation>
    </message>
    <message>
        <source>All that was handed in of this sitting is shut: see above.</source>
        <translation>Todo lo entregado de esta prueba está cerrado: véase arriba.</translation>
    </message>
    <message>
        <source>Nothing was handed in yet. Sittings that are sat on this machine come here by themselves; results from other machines are brought in from their files: choose them above, or drop them here.</source>
        <translation>Aún no se ha entregado nada. Las pruebas hechas en este equipo llegan aquí por sí solas; los resultados de otros equipos se incorporan desde sus archivos: elíjalos arriba o suéltelos aquí.</translation>
    </message>
    <message>
        <source>{ready} ready, {not_yet} not yet, {unseen} not seen enough of. What counts: calls at the bench and in sittings, made before anything told how they went.</source>
        <translation>{ready} listos, {not_yet} todavía no, {unseen} con poco visto. Lo que cuenta: dictámenes en el banco y en pruebas, hechos antes de saber cómo iban.</translation>
    </message>
    <message>
        <source>There is no learner yet: add the class under Class, or bring results in.</source>
        <translation>Aún no hay aprendices: añada la clase en Clase o incorpore resultados.</translation>
    </message>
</context>
<context>
    <name>ComposeBar</name>
    <message>
        <source>Sitting</source>
        <translation>Prueba</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Rehacer</translation>
    </message>
    <message>
        <source>Try it</source>
        <translation>Probar</translation>
    </message>
    <message>
        <source>&amp;New</source>
        <translation>&amp;Nueva</translation>
    </message>
    <message>
        <source>&amp;Open a sealed sitting...</source>
        <translation>&amp;Abrir una prueba sellada...</translation>
    </message>
    <message>
        <source>&amp;Seal again, same file and passphrase</source>
        <translation>&amp;Sellar de nuevo, mismo archivo y frase</translation>
    </message>
    <message>
        <source>Seal and save &amp;as...</source>
        <translation>Sellar y guardar &amp;como...</translation>
    </message>
    <message>
        <source>&amp;Recent sittings</source>
        <translation>Pruebas &amp;recientes</translation>
    </message>
    <message>
        <source>Undo: {what} (Ctrl+Z)</source>
        <translation>Deshacer: {what} (Ctrl+Z)</translation>
    </message>
    <message>
        <source>Redo: {what} (Ctrl+Y)</source>
        <translation>Rehacer: {what} (Ctrl+Y)</translation>
    </message>
    <message>
        <source>Not sealed yet</source>
        <translation>Aún sin sellar</translation>
    </message>
    <message>
        <source>Sealing...</source>
        <translation>Sellando...</translation>
    </message>
    <message>
        <source>changed since</source>
        <translation>cambiada desde entonces</translation>
    </message>
    <message>
        <source>sealed</source>
        <translation>sellada</translation>
    </message>
</context>
<context>
    <name>ComposePage</name>
    <message>
        <source>Coupons</source>
        <translation>Cupones</translation>
    </message>
    <message>
        <source>A learner&apos;s paper</source>
        <translation>El examen de cada cual</translation>
    </message>
    <message>
        <source>Compose a sitting</source>
        <translation>Componer una prueba</translation>
    </message>
    <message>
        <source>Sittings: compose</source>
        <translation>Pruebas: componer</translation>
    </message>
    <message>
        <source>Time and marks</source>
        <translation>Tiempo y notas</translation>
    </message>
    <message>
        <source>Learners</source>
        <translation>Aprendices</translation>
    </message>
    <message>
        <source>Seal and save...</source>
        <translation>Sellar y guardar...</translation>
    </message>
    <message>
        <source>Seal and save (Ctrl+Shift+S)</source>
        <translation>Sellar y guardar (Ctrl+Mayús+S)</translation>
    </message>
    <message>
        <source>Coupons from a tray</source>
        <translation>Cupones de una bandeja</translation>
    </message>
    <message>
        <source>Trays (*{suffix});;All files (*)</source>
        <translation>Bandejas (*{suffix});;Todos los archivos (*)</translation>
    </message>
    <message>
        <source>The coupon shop has no tray open: visit it first.</source>
        <translation>El taller de cupones no tiene ninguna bandeja abierta: vaya allí primero.</translation>
    </message>
    <message>
        <source>Its rules are not at hand</source>
        <translation>Faltan sus reglas</translation>
    </message>
    <message>
        <source>Some of these coupons are judged by rules of the shop&apos;s own, from a file beside their tray. Open the tray from its file instead.</source>
        <translation>Algunos de estos cupones se juzgan con reglas propias del taller, de un archivo junto a su bandeja. Abra la bandeja desde su archivo.</translation>
    </message>
    <message>
        <source>Added: {coupons}</source>
        <translation>Añadido: {coupons}</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Añadir</translation>
    </message>
    <message>
        <source>Change</source>
        <translation>Cambiar</translation>
    </message>
    <message>
        <source>Coupons from dice</source>
        <translation>Cupones a los dados</translation>
    </message>
    <message>
        <source>Each learner gets welds of their own by this recipe, equally hard. Nothing is kept but the recipe: the same learner always gets the same.</source>
        <translation>Con esta receta cada aprendiz recibe soldaduras propias, igual de difíciles. Solo se guarda la receta: el mismo aprendiz recibe siempre lo mismo.</translation>
    </message>
    <message>
        <source>There is no paper to try yet.</source>
        <translation>Aún no hay examen que probar.</translation>
    </message>
    <message>
        <source>Learners ({n})</source>
        <translation>Aprendices ({n})</translation>
    </message>
    <message>
        <source>Looking it through...</source>
        <translation>Revisando...</translation>
    </message>
    <message>
        <source>Not yet:</source>
        <translation>Todavía no:</translation>
    </message>
    <message>
        <source>Can be sealed: {coupons} in {time}.</source>
        <translation>Se puede sellar: {coupons} en {time}.</translation>
    </message>
</context>
<context>
    <name>Contents</name>
    <message>
        <source>Entries</source>
        <translation>Entradas</translation>
    </message>
</context>
<context>
    <name>Corners</name>
    <message>
        <source>{leaf} leaf · legs {base} and {upright} · joint {angle}</source>
        <translation>hoja de {leaf} · catetos {base} y {upright} · unión {angle}</translation>
    </message>
    <message>
        <source>base leg {length}</source>
        <translation>cateto base {length}</translation>
    </message>
    <message>
        <source>upright leg {length}</source>
        <translation>cateto montante {length}</translation>
    </message>
    <message>
        <source>size {length}</source>
        <translation>tamaño {length}</translation>
    </message>
    <message>
        <source>actual</source>
        <translation>real</translation>
    </message>
    <message>
        <source>theoretical</source>
        <translation>teórica</translation>
    </message>
    <message>
        <source>effective</source>
        <translation>efectiva</translation>
    </message>
    <message>
        <source>{which} {length}</source>
        <translation>{which} {length}</translation>
    </message>
    <message>
        <source> = </source>
        <translation> = </translation>
    </message>
    <message>
        <source>“{text}” is no angle; 90 would be one.</source>
        <translation>«{text}» no es un ángulo; 90 sí lo sería.</translation>
    </message>
    <message>
        <source>“{text}” is no length; 8 mm or 5/16 in would be one.</source>
        <translation>«{text}» no es una longitud; 8 mm o 5/16 in sí lo serían.</translation>
    </message>
    <message>
        <source>Save picture</source>
        <translation>Guardar imagen</translation>
    </message>
    <message>
        <source>Picture (*{suffix})</source>
        <translation>Imagen (*{suffix})</translation>
    </message>
    <message>
        <source>The {member} leg meets {leaf}, and on a convex bead the legs set the size; turn the leaf over for the other leg.</source>
        <translation>El cateto ({member}) llega a {leaf}, y en un cordón convexo mandan los catetos; voltee la hoja para el otro.</translation>
    </message>
    <message>
        <source>The {member} leg meets {leaf}; on a flat face both edges give this answer.</source>
        <translation>El cateto ({member}) llega a {leaf}; en una cara plana ambos cantos responden lo mismo.</translation>
    </message>
    <message>
        <source>The {member} leg meets {leaf}, but only the throat edge shows that so slight a hollow costs nothing.</source>
        <translation>El cateto ({member}) llega a {leaf}, pero solo el canto de garganta muestra que tan poca concavidad no cuesta nada.</translation>
    </message>
    <message>
        <source>The {member} leg meets {leaf}, but the {other} leg is only {other_leg}: turn the leaf over.</source>
        <translation>El cateto ({member}) llega a {leaf}, pero el otro ({other}) es solo de {other_leg}: voltee la hoja.</translation>
    </message>
    <message>
        <source>The toe stands at {leg}, but the hollow leaves a size of only {size}: ask the throat edge.</source>
        <translation>El borde está a {leg}, pero la concavidad deja un tamaño de solo {size}: pregunte al canto de garganta.</translation>
    </message>
    <message>
        <source>The face bulges up to the tip, yet the size is only {size}: look at the toe.</source>
        <translation>La cara se abomba hasta la punta, pero el tamaño es solo de {size}: mire el borde.</translation>
    </message>
    <message>
        <source>The {member} leg is larger than {leaf}; how much larger only a larger leaf can tell.</source>
        <translation>El cateto ({member}) es mayor que {leaf}; cuánto, solo lo dice una hoja mayor.</translation>
    </message>
    <message>
        <source>The face bulges past its toe and holds the tip off; the {member} leg is {leg}, no larger than the leaf.</source>
        <translation>La cara se abomba más allá del borde y aparta la punta; el cateto ({member}) es de {leg}, no mayor que la hoja.</translation>
    </message>
    <message>
        <source>The {member} leg is larger than {leaf}; what the hollow takes from it, this edge doesn&apos;t show.</source>
        <translation>El cateto ({member}) es mayor que {leaf}; lo que le quita la concavidad, este canto no lo muestra.</translation>
    </message>
    <message>
        <source>The {member} leg is larger than {leaf}, but the {other} leg is only {other_leg}: turn the leaf over.</source>
        <translation>El cateto ({member}) es mayor que {leaf}, pero el otro ({other}) es solo de {other_leg}: voltee la hoja.</translation>
    </message>
    <message>
        <source>The {member} leg is larger than {leaf}, but the hollow leaves a size of only {size}: ask the throat edge.</source>
        <translation>El cateto ({member}) es mayor que {leaf}, pero la concavidad deja un tamaño de solo {size}: pregunte al canto de garganta.</translation>
    </message>
    <message>
        <source>The face bulges past its toe and holds the tip off, yet the size is only {size}.</source>
        <translation>La cara se abomba más allá del borde y aparta la punta, pero el tamaño es solo de {size}.</translation>
    </message>
    <message>
        <source>The {member} leg is {gap} short of {leaf}; no crown makes up for a short leg.</source>
        <translation>Al cateto ({member}) le faltan {gap} para {leaf}; ninguna convexidad suple un cateto corto.</translation>
    </message>
    <message>
        <source>The {member} leg is {gap} short; the hollow takes the size down to {size}, which this edge doesn&apos;t show.</source>
        <translation>Al cateto ({member}) le faltan {gap}; la concavidad baja el tamaño a {size}, y este canto no lo muestra.</translation>
    </message>
    <message>
        <source>At {angle} the tip sees only {square} of the {leg} leg, so it shows daylight on a weld of full size.</source>
        <translation>A {angle} la punta ve solo {square} del cateto de {leg}, y muestra luz en un cordón que da la medida.</translation>
    </message>
    <message>
        <source>At {angle} the tip sees only {square} of the {leg} leg; the size is {size}, and the gap tells neither.</source>
        <translation>A {angle} la punta ve solo {square} del cateto de {leg}; el tamaño es {size}, y la luz no dice ni lo uno ni lo otro.</translation>
    </message>
    <message>
        <source>At {angle} the end edge strikes the leaning plate before the tip can: here this leaf can&apos;t read a leg.</source>
        <translation>A {angle} el canto del extremo tropieza con la chapa inclinada antes que la punta: aquí esta hoja no puede leer un cateto.</translation>
    </message>
    <message>
        <source>The {other} leg, {other_leg}, reaches under the edge and lifts the leaf: take a larger one.</source>
        <translation>El otro cateto ({other}), de {other_leg}, llega bajo el canto y levanta la hoja: tome una mayor.</translation>
    </message>
    <message>
        <source>The crown, {crown}, fills the leaf&apos;s relief and carries it: nothing is read of the leg.</source>
        <translation>La convexidad, {crown}, llena el rebaje de la hoja y la sostiene: del cateto no se lee nada.</translation>
    </message>
    <message>
        <source>Weld metal carries the leaf before it comes home: nothing is read.</source>
        <translation>El metal sostiene la hoja antes de llegar a fondo: no se lee nada.</translation>
    </message>
    <message>
        <source>The leaf doesn&apos;t come home in this joint: nothing is read.</source>
        <translation>En esta unión la hoja no llega a fondo: no se lee nada.</translation>
    </message>
    <message>
        <source>The face stands as high as a flat {leaf} weld&apos;s; it is the legs that decide, and this edge doesn&apos;t show them.</source>
        <translation>La cara llega tan alto como la de un cordón plano de {leaf}; deciden los catetos, y este canto no los muestra.</translation>
    </message>
    <message>
        <source>The throat is that of {leaf}; on a flat face both edges give this answer.</source>
        <translation>La garganta es la de {leaf}; en una cara plana ambos cantos responden lo mismo.</translation>
    </message>
    <message>
        <source>The throat is that of {leaf}, which decides on a hollow bead; gauge both legs as well.</source>
        <translation>La garganta es la de {leaf}, y en un cordón cóncavo decide; mida también ambos catetos.</translation>
    </message>
    <message>
        <source>The crown fills the throat, but the legs are only {short_leg}: this edge flatters a convex bead.</source>
        <translation>La convexidad llena la garganta, pero los catetos son solo de {short_leg}: este canto favorece a un cordón convexo.</translation>
    </message>
    <message>
        <source>It looks at the middle alone: with legs of {leg} and {other_leg} the size is only {size}.</source>
        <translation>Solo mira el centro: con catetos de {leg} y {other_leg} el tamaño es solo de {size}.</translation>
    </message>
    <message>
        <source>In the middle there is enough, yet the size is only {size}: gauge both legs.</source>
        <translation>En el centro basta, pero el tamaño es solo de {size}: mida ambos catetos.</translation>
    </message>
    <message>
        <source>The spur rides the crown: enough throat, but it tells nothing of the legs.</source>
        <translation>El espolón monta sobre la convexidad: garganta suficiente, pero nada dice de los catetos.</translation>
    </message>
    <message>
        <source>The throat is more than that of {leaf}; how much more only a larger leaf can tell.</source>
        <translation>La garganta pasa de la de {leaf}; cuánto, solo lo dice una hoja mayor.</translation>
    </message>
    <message>
        <source>Even in its hollow the throat is more than that of {leaf}; gauge both legs as well.</source>
        <translation>Aun cóncavo, la garganta pasa de la de {leaf}; mida también ambos catetos.</translation>
    </message>
    <message>
        <source>The spur rides the crown, which hides that the legs are only {short_leg}.</source>
        <translation>El espolón monta sobre la convexidad, que oculta que los catetos son solo de {short_leg}.</translation>
    </message>
    <message>
        <source>The spur rides the middle: with legs of {leg} and {other_leg} the size is only {size}.</source>
        <translation>El espolón monta sobre el centro: con catetos de {leg} y {other_leg} el tamaño es solo de {size}.</translation>
    </message>
    <message>
        <source>The spur rides the middle, yet the size is only {size}: gauge both legs.</source>
        <translation>El espolón monta sobre el centro, pero el tamaño es solo de {size}: mida ambos catetos.</translation>
    </message>
    <message>
        <source>Even with its crown the throat is {gap} short; the legs decide, and this edge doesn&apos;t show them.</source>
        <translation>Aun con su convexidad, a la garganta le faltan {gap}; deciden los catetos, y este canto no los muestra.</translation>
    </message>
    <message>
        <source>The throat is {gap} short, a size of {size}: the leg edge would say the same.</source>
        <translation>A la garganta le faltan {gap}, un tamaño de {size}: el canto de cateto diría lo mismo.</translation>
    </message>
    <message>
        <source>The throat is {gap} short: the hollow leaves a size of {size}, whatever the legs show.</source>
        <translation>A la garganta le faltan {gap}: la concavidad deja un tamaño de {size}, muestren lo que muestren los catetos.</translation>
    </message>
    <message>
        <source>At {angle} the two edges can&apos;t both lie flush, so the spur has no place to read from.</source>
        <translation>A {angle} los dos cantos no pueden asentar a la vez, y el espolón no tiene desde dónde leer.</translation>
    </message>
    <message>
        <source>The legs reach under the edges and lift the leaf: take a larger one.</source>
        <translation>Los catetos llegan bajo los cantos y levantan la hoja: tome una mayor.</translation>
    </message>
    <message>
        <source>The crown carries the leaf beside its spur: nothing is read.</source>
        <translation>La convexidad sostiene la hoja al lado del espolón: no se lee nada.</translation>
    </message>
    <message>
        <source>The edges don&apos;t both come to lie flush in this joint: nothing is read.</source>
        <translation>En esta unión los dos cantos no llegan a asentar: no se lee nada.</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>Honest</source>
        <translation>Veraz</translation>
    </message>
    <message>
        <source>Half the story</source>
        <translation>Media verdad</translation>
    </message>
    <message>
        <source>False comfort</source>
        <translation>Falso alivio</translation>
    </message>
    <message>
        <source>False alarm</source>
        <translation>Falsa alarma</translation>
    </message>
    <message>
        <source>Says nothing</source>
        <translation>No dice nada</translation>
    </message>
    <message>
        <source>Convex bead</source>
        <translation>Convexo</translation>
    </message>
    <message>
        <source>Flat bead</source>
        <translation>Plano</translation>
    </message>
    <message>
        <source>Hollow bead</source>
        <translation>Cóncavo</translation>
    </message>
    <message>
        <source>{heading}: {state}. {trust}. {sentence}</source>
        <translation>{heading}: {state}. {trust}. {sentence}</translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation>Cateto en la base</translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation>Cateto en el montante</translation>
    </message>
    <message>
        <source>Upper crown</source>
        <translation>Curva de arriba</translation>
    </message>
    <message>
        <source>Lower crown</source>
        <translation>Curva de abajo</translation>
    </message>
    <message>
        <source>Joint angle</source>
        <translation>Ángulo</translation>
    </message>
    <message>
        <source>upper bead</source>
        <translation>cordón de arriba</translation>
    </message>
    <message>
        <source>lower bead</source>
        <translation>cordón de abajo</translation>
    </message>
    <message>
        <source>Legs</source>
        <translation>Catetos</translation>
    </message>
    <message>
        <source>Triangle</source>
        <translation>Triángulo</translation>
    </message>
    <message>
        <source>Throats</source>
        <translation>Gargantas</translation>
    </message>
    <message>
        <source>The hollow stays at {crown}: any deeper and the face enters a plate.</source>
        <translation>La concavidad se queda en {crown}: más honda, la cara entraría en una chapa.</translation>
    </message>
    <message>
        <source>The crown stays at {crown}: any rounder and the face enters a plate.</source>
        <translation>La convexidad se queda en {crown}: más redonda, la cara entraría en una chapa.</translation>
    </message>
    <message>
        <source>A fillet&apos;s joint opens 60° to 135°.</source>
        <translation>La unión de un filete abre de 60° a 135°.</translation>
    </message>
    <message>
        <source>A crown goes to {value} here.</source>
        <translation>Aquí la convexidad llega hasta {value}.</translation>
    </message>
    <message>
        <source>A leg goes to {value} here.</source>
        <translation>Aquí un cateto llega hasta {value}.</translation>
    </message>
</context>
<context>
    <name>CornersKeys</name>
    <message>
        <source>give the talk; on to its next stop</source>
        <translation>dar la charla; a su parada siguiente</translation>
    </message>
    <message>
        <source>←  PgUp</source>
        <translation>←  RePág</translation>
    </message>
    <message>
        <source>back to the stop before</source>
        <translation>a la parada anterior</translation>
    </message>
    <message>
        <source>full screen, for a projector</source>
        <translation>pantalla completa, para proyector</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>end the talk; leave the full screen</source>
        <translation>terminar la charla; salir de pantalla completa</translation>
    </message>
    <message>
        <source>take the next smaller or larger leaf</source>
        <translation>tomar la hoja menor o mayor siguiente</translation>
    </message>
    <message>
        <source>turn the leaf over: its tip to the other member</source>
        <translation>voltear la hoja: su punta hacia la otra pieza</translation>
    </message>
    <message>
        <source>keep both legs equal, or let them part</source>
        <translation>catetos iguales, o cada uno por su lado</translation>
    </message>
    <message>
        <source>Home</source>
        <translation>Inicio</translation>
    </message>
    <message>
        <source>Ctrl+Z</source>
        <translation>Ctrl+Z</translation>
    </message>
    <message>
        <source>draw legs, inscribed triangle, throats</source>
        <translation>dibujar catetos, triángulo inscrito, gargantas</translation>
    </message>
    <message>
        <source>The talk</source>
        <translation>La charla</translation>
    </message>
    <message>
        <source>Weld and leaf</source>
        <translation>Cordón y hoja</translation>
    </message>
    <message>
        <source>The pictures</source>
        <translation>Las imágenes</translation>
    </message>
    <message>
        <source>on a handle that was clicked: move it 0.1 mm; with Shift 1 mm</source>
        <translation>en un tirador elegido: moverlo 0,1 mm; con Mayús 1 mm</translation>
    </message>
    <message>
        <source>bring the pictures as close as they may be</source>
        <translation>acercar las imágenes cuanto se pueda</translation>
    </message>
    <message>
        <source>start again</source>
        <translation>empezar de nuevo</translation>
    </message>
    <message>
        <source>→  Space  PgDn</source>
        <translation>→  Espacio  AvPág</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>deshacer</translation>
    </message>
    <message>
        <source>Ctrl+C</source>
        <translation>Ctrl+C</translation>
    </message>
    <message>
        <source>copy the picture</source>
        <translation>copiar la imagen</translation>
    </message>
    <message>
        <source>Ctrl+S</source>
        <translation>Ctrl+S</translation>
    </message>
    <message>
        <source>save the picture for a slide</source>
        <translation>guardar la imagen para una diapositiva</translation>
    </message>
</context>
<context>
    <name>CornersScreen</name>
    <message>
        <source>Four corners</source>
        <translation>Cuatro rincones</translation>
    </message>
    <message>
        <source>Esc leaves the full screen; the right arrow gives the talk</source>
        <translation>Esc sale de pantalla completa; la flecha derecha da la charla</translation>
    </message>
    <message>
        <source>Copied, 1920 × 1080</source>
        <translation>Copiada, 1920 × 1080</translation>
    </message>
    <message>
        <source>The picture could not be saved</source>
        <translation>No se pudo guardar la imagen</translation>
    </message>
    <message>
        <source>{file}: {reason}

Whatever was there is as it was. Choose another folder, or free some space in this one.</source>
        <translation>{file}: {reason}

Lo que hubiera ahí sigue como estaba. Elija otra carpeta, o libere espacio en esta.</translation>
    </message>
    <message>
        <source>Saved: {file}</source>
        <translation>Guardada: {file}</translation>
    </message>
</context>
<context>
    <name>Counts</name>
    <message numerus="yes">
        <source>%n outline(s)</source>
        <translation>
            <numerusform>%n contorno</numerusform>
            <numerusform>%n contornos</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n point(s)</source>
        <translation>
            <numerusform>%n punto</numerusform>
            <numerusform>%n puntos</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n point(s) farther off than the others scatter</source>
        <translation>
            <numerusform>%n punto más lejos de lo que se dispersan los demás</numerusform>
            <numerusform>%n puntos más lejos de lo que se dispersan los demás</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n point(s) in patches that stand off</source>
        <translation>
            <numerusform>%n punto en grupos apartados</numerusform>
            <numerusform>%n puntos en grupos apartados</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n place(s) where nothing was seen</source>
        <translation>
            <numerusform>%n lugar donde no se vio nada</numerusform>
            <numerusform>%n lugares donde no se vio nada</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>And %n more.</source>
        <translation>
            <numerusform>Y %n más.</numerusform>
            <numerusform>Y %n más.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>CouponMap</name>
    <message>
        <source>Map of the coupons</source>
        <translation>Mapa de los cupones</translation>
    </message>
    <message>
        <source>for review</source>
        <translation>para revisar</translation>
    </message>
</context>
<context>
    <name>Dealing</name>
    <message>
        <source>Add a learner</source>
        <translation>Añadir un aprendiz</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Añadir</translation>
    </message>
    <message>
        <source>Rename {name}</source>
        <translation>Cambiar el nombre de {name}</translation>
    </message>
    <message>
        <source>Rename</source>
        <translation>Cambiar</translation>
    </message>
    <message>
        <source>A name of their own choosing: it needn&apos;t be the one in their passport.</source>
        <translation>Un nombre a su elección: no tiene por qué ser el del pasaporte.</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>All attempts of {name} are erased for good, from the logbook and from its own dated backups. Copies that were carried away are not reached, nor what was handed in sealed: the class page, under Sittings, erases that too. To go on, write the name.</source>
        <translation>Todos los intentos de {name} se borran para siempre, del cuaderno y de sus copias fechadas. Las copias que se llevaron a otra parte no se alcanzan, ni lo que se entregó sellado: eso lo borra también la página Clase, en Pruebas. Para seguir, escriba el nombre.</translation>
    </message>
    <message>
        <source>Erase {name}</source>
        <translation>Borrar a {name}</translation>
    </message>
    <message>
        <source>Erase for good</source>
        <translation>Borrar para siempre</translation>
    </message>
    <message>
        <source>It is written</source>
        <translation>Está escrito</translation>
    </message>
    <message>
        <source>Save as</source>
        <translation>Guardar como</translation>
    </message>
    <message>
        <source>Put a backup back</source>
        <translation>Reponer una copia</translation>
    </message>
    <message>
        <source>Logbook (*.sqlite3)</source>
        <translation>Cuaderno (*.sqlite3)</translation>
    </message>
    <message>
        <source>What was there until now is kept as {path}.</source>
        <translation>Lo que había hasta ahora se conserva como {path}.</translation>
    </message>
    <message>
        <source>The backup is back</source>
        <translation>La copia está repuesta</translation>
    </message>
    <message>
        <source>It could not be written.</source>
        <translation>No se pudo escribir.</translation>
    </message>
</context>
<context>
    <name>Debrief</name>
    <message>
        <source>Face</source>
        <translation>Cara</translation>
    </message>
    <message>
        <source>Leaf</source>
        <translation>Hoja</translation>
    </message>
    <message>
        <source>Edge</source>
        <translation>Canto</translation>
    </message>
    <message>
        <source>Seat</source>
        <translation>Apoyo</translation>
    </message>
    <message>
        <source>Both legs</source>
        <translation>Ambos catetos</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Lectura</translation>
    </message>
    <message>
        <source>Disposition</source>
        <translation>Disposición</translation>
    </message>
    <message>
        <source>What is wrong</source>
        <translation>Qué falla</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Medida</translation>
    </message>
    <message>
        <source>Bench notes</source>
        <translation>Notas del banco</translation>
    </message>
    <message>
        <source>leg on the base</source>
        <translation>cateto en la base</translation>
    </message>
    <message>
        <source>leg on the upright</source>
        <translation>cateto en el montante</translation>
    </message>
    <message>
        <source>actual throat</source>
        <translation>garganta real</translation>
    </message>
    <message>
        <source>theoretical throat</source>
        <translation>garganta teórica</translation>
    </message>
    <message>
        <source>effective size</source>
        <translation>tamaño efectivo</translation>
    </message>
    <message>
        <source>effective throat</source>
        <translation>garganta efectiva</translation>
    </message>
    <message>
        <source>convexity</source>
        <translation>convexidad</translation>
    </message>
    <message>
        <source>concavity</source>
        <translation>concavidad</translation>
    </message>
    <message>
        <source>undercut at the base toe</source>
        <translation>mordedura en el borde de la base</translation>
    </message>
    <message>
        <source>undercut at the upright toe</source>
        <translation>mordedura en el borde del montante</translation>
    </message>
    <message>
        <source>overlap on the base</source>
        <translation>solape en la base</translation>
    </message>
    <message>
        <source>overlap on the upright</source>
        <translation>solape en el montante</translation>
    </message>
    <message>
        <source>root opening</source>
        <translation>separación en la raíz</translation>
    </message>
    <message>
        <source>toe angle on the base</source>
        <translation>ángulo del borde en la base</translation>
    </message>
    <message>
        <source>toe angle on the upright</source>
        <translation>ángulo del borde en el montante</translation>
    </message>
    <message>
        <source>difference of the legs</source>
        <translation>diferencia de catetos</translation>
    </message>
    <message>
        <source>throat&apos;s excess</source>
        <translation>exceso de garganta</translation>
    </message>
    <message>
        <source>size called for along the edge</source>
        <translation>tamaño indicado a lo largo del canto</translation>
    </message>
    <message>
        <source>joint&apos;s angle</source>
        <translation>ángulo de la unión</translation>
    </message>
    <message>
        <source>The face is convex: {off} beyond the line from toe to toe.</source>
        <translation>La cara es convexa: sobresale {off} de la recta de borde a borde.</translation>
    </message>
    <message>
        <source>The face is hollow: {off} short of the line from toe to toe.</source>
        <translation>La cara es cóncava: le faltan {off} hasta la recta de borde a borde.</translation>
    </message>
    <message>
        <source>The face is flat: {off} off the line from toe to toe.</source>
        <translation>La cara es plana: se aparta {off} de la recta de borde a borde.</translation>
    </message>
    <message>
        <source>No leaf was held to the weld.</source>
        <translation>No se apoyó ninguna hoja en el cordón.</translation>
    </message>
    <message>
        <source>A hollow face is read at the throat, with the throat edge.</source>
        <translation>Una cara cóncava se lee en la garganta, con el canto de garganta.</translation>
    </message>
    <message>
        <source>A convex face is gauged at its legs, with the leg edge: at the throat its crown flatters it.</source>
        <translation>Una cara convexa se mide en sus catetos, con el canto de cateto: en la garganta la convexidad la favorece.</translation>
    </message>
    <message>
        <source>The leg on the {member} was not gauged with the leg edge.</source>
        <translation>Un cateto ({member}) no se midió con el canto de cateto.</translation>
    </message>
    <message>
        <source>Nothing is wrong with how the leaf is held; you said: {stated}.</source>
        <translation>Nada falla en cómo se sujeta la hoja; usted dijo: {stated}.</translation>
    </message>
    <message>
        <source>What is wrong: {faults}; you said: {stated}.</source>
        <translation>Qué falla: {faults}; usted dijo: {stated}.</translation>
    </message>
    <message>
        <source>The largest leaf that the weld meets: {leaf}; you said {mark}.</source>
        <translation>La mayor hoja que el cordón cumple: {leaf}; usted dijo {mark}.</translation>
    </message>
    <message>
        <source>The weld meets no leaf of this set; you said {mark}.</source>
        <translation>El cordón no cumple ninguna hoja de este juego; usted dijo {mark}.</translation>
    </message>
    <message>
        <source>Bench notes turned up: {count}. That takes {off} off the score.</source>
        <translation>Notas del banco vueltas: {count}. Eso resta {off} a la nota final.</translation>
    </message>
    <message>
        <source>the leaf {mark}</source>
        <translation>la hoja {mark}</translation>
    </message>
    <message>
        <source>the {mark} leaf</source>
        <translation>la hoja de {mark}</translation>
    </message>
    <message>
        <source>Use {leaf}.</source>
        <translation>Use {leaf}.</translation>
    </message>
    <message>
        <source>Use {leaf} and {other}, one on either side of the weld.</source>
        <translation>Use {leaf} y {other}: una por debajo del cordón y otra por encima.</translation>
    </message>
    <message>
        <source>Use {leaf} and {other}, one on either side of the limit.</source>
        <translation>Use {leaf} y {other}: una por debajo del límite y otra por encima.</translation>
    </message>
    <message>
        <source>A leaf reads a leg square to the member that its long edge lies on: leg × sin({angle}°).</source>
        <translation>La hoja lee el cateto a escuadra de la pieza en que apoya su canto largo: cateto × sen({angle}°).</translation>
    </message>
    <message>
        <source>Reading {n}</source>
        <translation>Lectura {n}</translation>
    </message>
    <message>
        <source>{name}: the leaf stands {depth} inside steel.</source>
        <translation>{name}: la hoja se mete {depth} en el acero.</translation>
    </message>
    <message>
        <source>{name}: the leaf is not seated.</source>
        <translation>{name}: la hoja no está asentada.</translation>
    </message>
    <message>
        <source>{name}: the leaf is not seated; in the way: {way}.</source>
        <translation>{name}: la hoja no está asentada; estorba: {way}.</translation>
    </message>
    <message>
        <source>{name}: the leaf shows {state}{gap}; you said {stated}.</source>
        <translation>{name}: la hoja muestra «{state}»{gap}; usted dijo «{stated}».</translation>
    </message>
    <message>
        <source>Right call: {right}. No leaf can settle the {keys} here.</source>
        <translation>Lo correcto: {right}. Aquí ninguna hoja puede decidir esto: {keys}.</translation>
    </message>
    <message>
        <source>Right call: {right}. Every measure meets its limit.</source>
        <translation>Lo correcto: {right}. Todas las medidas cumplen su límite.</translation>
    </message>
    <message>
        <source>Right call: {right}. The {key} is {found};</source>
        <translation>Lo correcto: {right}. Medida: {key}, {found};</translation>
    </message>
    <message>
        <source>{sum} = {limit} needed</source>
        <translation>{sum} = {limit} necesarios</translation>
    </message>
    <message>
        <source>{limit} is called for</source>
        <translation>se indica {limit}</translation>
    </message>
    <message>
        <source>{limit} is needed</source>
        <translation>se necesita {limit}</translation>
    </message>
    <message>
        <source>{limit} is allowed</source>
        <translation>se admite {limit}</translation>
    </message>
    <message>
        <source>{size} least size</source>
        <translation>{size} de tamaño mínimo</translation>
    </message>
    <message>
        <source>{size} called for</source>
        <translation>{size} indicados</translation>
    </message>
    <message>
        <source>; {size} under is allowed over {share} % of the length at most, and this section stands for {extent} %</source>
        <translation>; se admiten {size} de menos en un {share} % de la longitud como máximo, y esta sección vale por un {extent} %</translation>
    </message>
    <message>
        <source>convex, {off}</source>
        <translation>convexa, {off}</translation>
    </message>
    <message>
        <source>hollow, {off}</source>
        <translation>cóncava, {off}</translation>
    </message>
    <message>
        <source>flat face</source>
        <translation>cara plana</translation>
    </message>
    <message>
        <source>no reading</source>
        <translation>sin lectura</translation>
    </message>
    <message>
        <source>leaf {leaves}</source>
        <translation>hoja {leaves}</translation>
    </message>
    <message>
        <source>throat edge here</source>
        <translation>aquí canto de garganta</translation>
    </message>
    <message>
        <source>legs, not throat</source>
        <translation>catetos, no garganta</translation>
    </message>
    <message>
        <source>not gauged</source>
        <translation>sin medir</translation>
    </message>
    <message>
        <source>inside steel</source>
        <translation>dentro del acero</translation>
    </message>
    <message>
        <source>not seated</source>
        <translation>sin asentar</translation>
    </message>
    <message>
        <source>largest met: {leaf}</source>
        <translation>mayor cumplida: {leaf}</translation>
    </message>
    <message>
        <source>no leaf met</source>
        <translation>ninguna hoja cumplida</translation>
    </message>
    <message>
        <source>Touch: tip and toe meet; the leg is the leaf&apos;s size.</source>
        <translation>Contacto: punta y borde se tocan; el cateto es del tamaño de la hoja.</translation>
    </message>
    <message>
        <source>Touch: the spur meets the face, both edges flush.</source>
        <translation>Contacto: el espolón toca la cara, con ambos cantos asentados.</translation>
    </message>
    <message>
        <source>Daylight, {gap} from tip to toe: the leg is smaller.</source>
        <translation>Luz, {gap} de la punta al borde: el cateto es menor.</translation>
    </message>
    <message>
        <source>Daylight, {gap} from spur to face: the throat is smaller.</source>
        <translation>Luz, {gap} del espolón a la cara: la garganta es menor.</translation>
    </message>
    <message>
        <source>Held off by {gap}: weld metal lies under the tip; the leg is larger.</source>
        <translation>Apartada {gap}: hay metal bajo la punta; el cateto es mayor.</translation>
    </message>
    <message>
        <source>Held off by {gap}: the spur rides on the face; the throat is larger.</source>
        <translation>Apartada {gap}: el espolón monta sobre la cara; la garganta es mayor.</translation>
    </message>
    <message>
        <source>Not seated, and says nothing; in the way: {way}.</source>
        <translation>Sin asentar, no dice nada; estorba: {way}.</translation>
    </message>
    <message>
        <source>Not seated: it isn&apos;t home, and says nothing.</source>
        <translation>Sin asentar: no está a fondo y no dice nada.</translation>
    </message>
    <message>
        <source>None at all: {things}</source>
        <translation>Nada en absoluto: {things}</translation>
    </message>
    <message>
        <source>undercut</source>
        <translation>mordedura</translation>
    </message>
    <message>
        <source>overlap</source>
        <translation>solape</translation>
    </message>
    <message>
        <source>{found}; {limit} needed: {off} over</source>
        <translation>{found}; necesario {limit}: sobran {off}</translation>
    </message>
    <message>
        <source>{found}; {limit} needed: {off} short</source>
        <translation>{found}; necesario {limit}: faltan {off}</translation>
    </message>
    <message>
        <source>{found}; at most {limit}: {off} too much</source>
        <translation>{found}; máximo {limit}: {off} de más</translation>
    </message>
    <message>
        <source>{found}; at most {limit}: {off} to spare</source>
        <translation>{found}; máximo {limit}: {off} de margen</translation>
    </message>
    <message>
        <source>nearer than a leaf can tell (±{doubt})</source>
        <translation>más cerca de lo que una hoja distingue (±{doubt})</translation>
    </message>
    <message>
        <source>Needed: {size} least size here</source>
        <translation>Necesario: {size}, tamaño mínimo aquí</translation>
    </message>
    <message>
        <source>Needed: {size} called for</source>
        <translation>Necesario: {size} indicados</translation>
    </message>
    <message>
        <source>{size} root opening</source>
        <translation>{size} de separación en la raíz</translation>
    </message>
    <message>
        <source>{size} allowed under</source>
        <translation>{size} admitidos de menos</translation>
    </message>
    <message>
        <source>Judged by: {rules} ({source}).</source>
        <translation>Juzgado según: {rules} ({source}).</translation>
    </message>
    <message>
        <source>this trainer&apos;s own rule</source>
        <translation>regla propia de este programa</translation>
    </message>
    <message>
        <source>seen in its text</source>
        <translation>vista en su texto</translation>
    </message>
    <message>
        <source>second-hand</source>
        <translation>de segunda mano</translation>
    </message>
    <message>
        <source>from memory</source>
        <translation>de memoria</translation>
    </message>
    <message>
        <source>Seat: home each time, with nothing in the way.</source>
        <translation>Apoyo: a fondo cada vez, sin estorbos.</translation>
    </message>
    <message>
        <source>Both legs: gauged, and the shorter one counts.</source>
        <translation>Ambos catetos: medidos, y cuenta el más corto.</translation>
    </message>
    <message>
        <source>Readings: each said as the leaf showed it.</source>
        <translation>Lecturas: cada una, como la mostró la hoja.</translation>
    </message>
    <message>
        <source>Call: {call}, for the reasons above.</source>
        <translation>Dictamen: {call}, por las razones de arriba.</translation>
    </message>
    <message>
        <source>Size: {mark}, as far as a leaf can tell.</source>
        <translation>Medida: {mark}, hasta donde una hoja puede decirlo.</translation>
    </message>
    <message>
        <source>What is wrong: {fault}.</source>
        <translation>Qué falla: {fault}.</translation>
    </message>
    <message>
        <source>Face: convex, {off} beyond the line from toe to toe.</source>
        <translation>Cara: convexa, sobresale {off} de la recta de borde a borde.</translation>
    </message>
    <message>
        <source>Face: hollow, {off} short of the line from toe to toe.</source>
        <translation>Cara: cóncava, le faltan {off} hasta la recta de borde a borde.</translation>
    </message>
    <message>
        <source>Face: flat, within {off} of the line from toe to toe.</source>
        <translation>Cara: plana, a menos de {off} de la recta de borde a borde.</translation>
    </message>
    <message>
        <source>Leaves: {marks}, at the weld&apos;s own size.</source>
        <translation>Hojas: {marks}, del tamaño del propio cordón.</translation>
    </message>
    <message>
        <source>Leaves: {marks}, one on either side of the limit.</source>
        <translation>Hojas: {marks}, una a cada lado del límite.</translation>
    </message>
    <message>
        <source>Leaf: {marks}, the size that is called for.</source>
        <translation>Hoja: {marks}, el tamaño indicado.</translation>
    </message>
    <message>
        <source>Edge: the leg edge; a crown would flatter the throat.</source>
        <translation>Canto: el de cateto; la convexidad favorecería la garganta.</translation>
    </message>
    <message>
        <source>Edge: the throat edge; a hollow is thin in the middle.</source>
        <translation>Canto: el de garganta; una cara cóncava es delgada en el centro.</translation>
    </message>
    <message>
        <source>Edge: on a flat face either tells the same.</source>
        <translation>Canto: en una cara plana ambos dicen lo mismo.</translation>
    </message>
    <message>
        <source>What you said of the leaf is what it showed.</source>
        <translation>Lo que dijo de la hoja es lo que mostraba.</translation>
    </message>
    <message>
        <source>Not all that you said of the leaf is what it showed.</source>
        <translation>No todo lo que dijo de la hoja es lo que mostraba.</translation>
    </message>
    <message>
        <source>No leaf of this set is met by the weld.</source>
        <translation>El cordón no cumple con ninguna hoja de este juego.</translation>
    </message>
    <message>
        <source>The largest leaf that the weld meets: {mark}. You have it.</source>
        <translation>La hoja más grande que cumple el cordón: {mark}. La tiene usted.</translation>
    </message>
    <message>
        <source>The largest leaf that the weld meets: {mark}.</source>
        <translation>La hoja más grande que cumple el cordón: {mark}.</translation>
    </message>
    <message>
        <source>You said: {stated}. Right would be: {faults}.</source>
        <translation>Usted dijo: {stated}. Lo correcto: {faults}.</translation>
    </message>
    <message>
        <source>You said: {stated}. That is right; so is: {faults}.</source>
        <translation>Usted dijo: {stated}. Es correcto; también: {faults}.</translation>
    </message>
    <message>
        <source>You said: {stated}. That is right.</source>
        <translation>Usted dijo: {stated}. Es correcto.</translation>
    </message>
    <message>
        <source>You did not say how sure you were. To be right is one skill, to know when you are is another: say it before the next call.</source>
        <translation>No dijo qué seguridad tenía. Acertar es una cosa; saber cuándo se acierta, otra: dígalo antes del próximo dictamen.</translation>
    </message>
    <message>
        <source>You said {share} % sure. No leaf can settle this one, so nobody could be certain.</source>
        <translation>Dijo una seguridad del {share} %. Ninguna hoja puede decidir este caso: nadie podía tener certeza.</translation>
    </message>
    <message>
        <source>Of ten calls made this sure, about {n} should turn out right.</source>
        <translation>De diez dictámenes con esta seguridad, unos {n} deberían ser correctos.</translation>
    </message>
    <message>
        <source>You said {share} % sure, and were right: trust what you saw.</source>
        <translation>Dijo una seguridad del {share} %, y acertó: confíe en lo que vio.</translation>
    </message>
    <message>
        <source>You said {share} % sure, and were right: look what made you doubt, and whether it should have.</source>
        <translation>Dijo una seguridad del {share} %, y acertó: mire qué le hizo dudar, y si había motivo.</translation>
    </message>
    <message>
        <source>You said {share} % sure, and were right all the same: what you saw was enough to go by.</source>
        <translation>Dijo una seguridad del {share} %, y aun así acertó: lo que vio bastaba.</translation>
    </message>
    <message>
        <source>You said {share} % sure, and were wrong. That is the costly kind: find what misled you before you go on.</source>
        <translation>Dijo una seguridad del {share} %, y se equivocó. Ese error es el caro: averigüe qué le engañó antes de seguir.</translation>
    </message>
    <message>
        <source>You said {share} % sure, and were wrong: one more seat might have told you.</source>
        <translation>Dijo una seguridad del {share} %, y se equivocó: un apoyo más quizá lo habría aclarado.</translation>
    </message>
    <message>
        <source>You said {share} % sure, and were wrong: your doubt was right. When that unsure, gauge again before you call.</source>
        <translation>Dijo una seguridad del {share} %, y se equivocó: su duda era fundada. Con tanta duda, mida otra vez antes de dictaminar.</translation>
    </message>
    <message>
        <source>spatter</source>
        <translation>salpicadura</translation>
    </message>
    <message>
        <source>{leaf}, throat</source>
        <translation>{leaf}, garganta</translation>
    </message>
    <message>
        <source>{leaf}, {member} leg</source>
        <translation>{leaf}, cateto de {member}</translation>
    </message>
</context>
<context>
    <name>DebriefPanel</name>
    <message>
        <source>Debrief</source>
        <translation>Repaso</translation>
    </message>
    <message>
        <source>What this coupon teaches</source>
        <translation>Lo que enseña este cupón</translation>
    </message>
    <message>
        <source>You said: {stated}. That is right.</source>
        <translation>Usted dijo: {stated}. Es correcto.</translation>
    </message>
    <message>
        <source>You said: {stated}. That is accepted.</source>
        <translation>Usted dijo: {stated}. Se admite.</translation>
    </message>
    <message>
        <source>You said: {stated}. Right call: {right}.</source>
        <translation>Usted dijo: {stated}. Lo correcto: {right}.</translation>
    </message>
    <message>
        <source>The weld is closer to its limit than a leaf can tell: either verdict, or refer, is right.</source>
        <translation>El cordón está más cerca de su límite de lo que una hoja distingue: vale cualquiera de los dos veredictos, o remitir.</translation>
    </message>
    <message>
        <source>Accepting what the rules reject fails the coupon, whatever else was right.</source>
        <translation>Aceptar lo que las reglas rechazan suspende el cupón, aunque lo demás sea correcto.</translation>
    </message>
    <message>
        <source>How sure you were</source>
        <translation>Su seguridad</translation>
    </message>
    <message>
        <source>What is wrong with how it is held</source>
        <translation>Qué falla en cómo se sujeta</translation>
    </message>
    <message>
        <source>How this weld should be gauged</source>
        <translation>Cómo debe medirse este cordón</translation>
    </message>
    <message>
        <source>What the weld measures, and must</source>
        <translation>Lo que mide el cordón y lo que debe medir</translation>
    </message>
    <message>
        <source>Meets it</source>
        <translation>Cumple</translation>
    </message>
    <message>
        <source>Fails it</source>
        <translation>No cumple</translation>
    </message>
    <message>
        <source>Too near to tell</source>
        <translation>Demasiado cerca para decidir</translation>
    </message>
    <message>
        <source>To do otherwise</source>
        <translation>Qué hacer de otro modo</translation>
    </message>
    <message>
        <source>To do otherwise, numbered as in the picture</source>
        <translation>A mejorar, numerado como en la imagen</translation>
    </message>
    <message>
        <source>Held right</source>
        <translation>Bien hecho</translation>
    </message>
    <message>
        <source>{held} of {asked} held right; score {n} %</source>
        <translation>{held} de {asked} bien hechos; nota {n} %</translation>
    </message>
    <message>
        <source>The score is the mean of all of them, and some were held in part.</source>
        <translation>La puntuación es la media de todos ellos, y algunos se cumplieron en parte.</translation>
    </message>
    <message>
        <source>The score is their mean, less 5 for each bench note turned up.</source>
        <translation>La puntuación es su media, menos 5 por cada nota del banco descubierta.</translation>
    </message>
    <message>
        <source>Your readings</source>
        <translation>Sus lecturas</translation>
    </message>
    <message>
        <source>{seat}, {tool}: you said {state}</source>
        <translation>{seat}, {tool}: usted dijo «{state}»</translation>
    </message>
    <message>
        <source>Look</source>
        <translation>Ver</translation>
    </message>
    <message>
        <source>Look at reading {n}</source>
        <translation>Ver la lectura {n}</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Correcta</translation>
    </message>
    <message>
        <source>Not right</source>
        <translation>No es correcta</translation>
    </message>
    <message>
        <source>True measures</source>
        <translation>Medidas reales</translation>
    </message>
</context>
<context>
    <name>Dice</name>
    <message>
        <source>Unequal legs</source>
        <translation>Catetos desiguales</translation>
    </message>
    <message>
        <source>Undercut</source>
        <translation>Mordedura</translation>
    </message>
    <message>
        <source>Overlap</source>
        <translation>Solape</translation>
    </message>
    <message>
        <source>Oversize crown</source>
        <translation>Abombamiento excesivo</translation>
    </message>
    <message>
        <source>Spatter</source>
        <translation>Salpicaduras</translation>
    </message>
    <message>
        <source>Root opening</source>
        <translation>Separación en la raíz</translation>
    </message>
    <message>
        <source>Joint out of square</source>
        <translation>Junta fuera de escuadra</translation>
    </message>
    <message>
        <source>Worn leaf</source>
        <translation>Hoja gastada</translation>
    </message>
    <message>
        <source>Coupons from dice</source>
        <translation>Cupones a los dados</translation>
    </message>
    <message>
        <source>Each is sound and unlike the others, and no single answer is right too often. The same seed and choices give the same coupons.</source>
        <translation>Cada uno es válido y distinto de los demás, y ninguna respuesta acierta demasiadas veces. La misma semilla y las mismas opciones dan los mismos cupones.</translation>
    </message>
    <message>
        <source>Coupons made</source>
        <translation>Cupones hechos</translation>
    </message>
    <message>
        <source>Throw</source>
        <translation>Tirar</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>How many</source>
        <translation>Cuántos</translation>
    </message>
    <message>
        <source>Seed</source>
        <translation>Semilla</translation>
    </message>
    <message>
        <source>Least size, by leg</source>
        <translation>Tamaño mínimo, por cateto</translation>
    </message>
    <message>
        <source>Greatest size, by leg</source>
        <translation>Tamaño máximo, por cateto</translation>
    </message>
    <message>
        <source>Nearest to a limit, × doubt</source>
        <translation>Lo más cerca de un límite, × duda</translation>
    </message>
    <message>
        <source>Farthest from it, × doubt</source>
        <translation>Lo más lejos de él, × duda</translation>
    </message>
    <message>
        <source>Share too near to tell</source>
        <translation>Parte demasiado cerca para decidir</translation>
    </message>
    <message>
        <source>millimetres</source>
        <translation>milímetros</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>pulgadas</translation>
    </message>
    <message>
        <source>leg (z)</source>
        <translation>cateto (z)</translation>
    </message>
    <message>
        <source>throat (a)</source>
        <translation>garganta (a)</translation>
    </message>
    <message>
        <source>plain to see</source>
        <translation>a simple vista</translation>
    </message>
    <message>
        <source>middling</source>
        <translation>mediana</translation>
    </message>
    <message>
        <source>hard</source>
        <translation>difícil</translation>
    </message>
    <message>
        <source>as stated below</source>
        <translation>como se indica abajo</translation>
    </message>
    <message>
        <source>Drawn in</source>
        <translation>Acotado en</translation>
    </message>
    <message>
        <source>Sized by</source>
        <translation>Medida por</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Reglas</translation>
    </message>
    <message>
        <source>Difficulty</source>
        <translation>Dificultad</translation>
    </message>
    <message>
        <source>Doubt: what a leaf can’t tell, 0.13 mm at a leg, 0.17 mm at the throat.</source>
        <translation>Duda: lo que una hoja no puede distinguir, 0,13 mm en un cateto, 0,17 mm en la garganta.</translation>
    </message>
    <message>
        <source>Another seed</source>
        <translation>Otra semilla</translation>
    </message>
    <message>
        <source>Faces</source>
        <translation>Caras</translation>
    </message>
    <message>
        <source>Traps</source>
        <translation>Trampas</translation>
    </message>
    <message>
        <source>Stopping...</source>
        <translation>Deteniendo...</translation>
    </message>
</context>
<context>
    <name>DoneStep</name>
    <message>
        <source>Try again</source>
        <translation>Probar otra vez</translation>
    </message>
    <message>
        <source>Save a copy...</source>
        <translation>Guardar una copia...</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Listo</translation>
    </message>
    <message>
        <source>Handing in…</source>
        <translation>Entregando…</translation>
    </message>
    <message>
        <source>All you have stated is kept. One moment.</source>
        <translation>Todo lo que ha declarado está guardado. Un momento.</translation>
    </message>
    <message>
        <source>The result can&apos;t be written yet</source>
        <translation>El resultado aún no puede escribirse</translation>
    </message>
    <message>
        <source>{reason}

Nothing is lost: all you have stated is kept at this machine. Make room on the disk, and try again; or leave, and go on with it later.</source>
        <translation>{reason}

No se pierde nada: todo lo que ha declarado está guardado en este equipo. Haga sitio en el disco y pruebe otra vez; o salga, y siga más tarde.</translation>
    </message>
    <message>
        <source>The time is up: your sitting is handed in</source>
        <translation>Se acabó el tiempo: su prueba está entregada</translation>
    </message>
    <message>
        <source>Your sitting is handed in</source>
        <translation>Su prueba está entregada</translation>
    </message>
    <message>
        <source>Of your coupons: {counts}.</source>
        <translation>De sus cupones: {counts}.</translation>
    </message>
    <message>
        <source>What you had stated by then counts.</source>
        <translation>Cuenta lo que había declarado hasta entonces.</translation>
    </message>
    <message numerus="yes">
        <source>The result notes %n interruption(s), with the time of each.</source>
        <translation>
            <numerusform>El resultado anota %n interrupción, con su hora.</numerusform>
            <numerusform>El resultado anota %n interrupciones, con la hora de cada una.</numerusform>
        </translation>
    </message>
    <message>
        <source>Your instructor opens it and tells you the marks. You may leave now.</source>
        <translation>Su instructor la abre y le dice las notas. Ya puede irse.</translation>
    </message>
    <message>
        <source>The sealed result lies at {file}</source>
        <translation>El resultado sellado está en {file}</translation>
    </message>
    <message>
        <source>It could not be taken into the logbook: {reason}. Open it on the page Results later; it is safe in its file.</source>
        <translation>No pudo incorporarse al cuaderno: {reason}. Ábralo más tarde en la página Resultados; está a salvo en su archivo.</translation>
    </message>
    <message>
        <source>the logbook is not open</source>
        <translation>el cuaderno no está abierto</translation>
    </message>
    <message>
        <source>This code has handed in this sitting before: both results are kept, and the instructor is told.</source>
        <translation>Este código ya entregó esta prueba: se guardan los dos resultados, y se le dice al instructor.</translation>
    </message>
</context>
<context>
    <name>DrawingForm</name>
    <message>
        <source>Callout</source>
        <translation>Lo indicado</translation>
    </message>
    <message>
        <source>leg (z)</source>
        <translation>cateto (z)</translation>
    </message>
    <message>
        <source>throat (a)</source>
        <translation>garganta (a)</translation>
    </message>
    <message>
        <source>Sized by</source>
        <translation>Medida por</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Tamaño</translation>
    </message>
    <message>
        <source>Upright leg, if it differs</source>
        <translation>Cateto del montante, si difiere</translation>
    </message>
    <message>
        <source>arrow side</source>
        <translation>lado de la flecha</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>lado opuesto</translation>
    </message>
    <message>
        <source>both sides</source>
        <translation>ambos lados</translation>
    </message>
    <message>
        <source>Side</source>
        <translation>Lado</translation>
    </message>
    <message>
        <source>Tail</source>
        <translation>Cola</translation>
    </message>
    <message>
        <source>All around</source>
        <translation>Todo alrededor</translation>
    </message>
    <message>
        <source>Made on site</source>
        <translation>Hecho en obra</translation>
    </message>
    <message>
        <source>Built out to the full edge</source>
        <translation>Rellenado hasta el canto</translation>
    </message>
    <message>
        <source>In pieces</source>
        <translation>Discontinuo</translation>
    </message>
    <message>
        <source>Length of a piece</source>
        <translation>Longitud de un tramo</translation>
    </message>
    <message>
        <source>pitch, centre to centre</source>
        <translation>paso, entre centros</translation>
    </message>
    <message>
        <source>clear gap</source>
        <translation>hueco libre</translation>
    </message>
    <message>
        <source>Spacing by</source>
        <translation>Separación por</translation>
    </message>
    <message>
        <source>Spacing</source>
        <translation>Separación</translation>
    </message>
    <message>
        <source>Count</source>
        <translation>Cantidad</translation>
    </message>
    <message>
        <source>Staggered</source>
        <translation>Al tresbolillo</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Reglas</translation>
    </message>
    <message>
        <source>Rule set</source>
        <translation>Conjunto de reglas</translation>
    </message>
    <message>
        <source>What they say</source>
        <translation>Qué dicen</translation>
    </message>
    <message>
        <source>Share of the length that is so</source>
        <translation>Parte de la longitud que es así</translation>
    </message>
    <message>
        <source>What the rules may ask</source>
        <translation>Lo que las reglas pueden pedir</translation>
    </message>
    <message>
        <source>no edge</source>
        <translation>ningún canto</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>Along the edge of</source>
        <translation>A lo largo del canto de</translation>
    </message>
    <message>
        <source>Length of the weld</source>
        <translation>Longitud del cordón</translation>
    </message>
    <message>
        <source>Low hydrogen, or preheated</source>
        <translation>Bajo hidrógeno, o precalentado</translation>
    </message>
    <message>
        <source>Across a primary member&apos;s tension</source>
        <translation>Cruza la tracción de una pieza principal</translation>
    </message>
    <message>
        <source>Web to flange at a girder&apos;s end</source>
        <translation>Alma con ala al extremo de una viga</translation>
    </message>
    <message>
        <source>Leaf and eye</source>
        <translation>Hoja y ojo</translation>
    </message>
    <message>
        <source>Eye limit</source>
        <translation>Límite del ojo</translation>
    </message>
    <message>
        <source>Wear of the leaf</source>
        <translation>Desgaste de la hoja</translation>
    </message>
</context>
<context>
    <name>Drill</name>
    <message>
        <source>Drill, {made} calls made. The day&apos;s first calls are made before anything tells you how they went: {left} more.</source>
        <translation>Ejercicio, {made} dictámenes hechos. Los primeros del día se hacen antes de que nada diga cómo fueron: {left} más.</translation>
    </message>
    <message>
        <source>Your line is known well enough</source>
        <translation>Su línea ya se conoce bien</translation>
    </message>
    <message>
        <source>Enough for one day</source>
        <translation>Basta por hoy</translation>
    </message>
    <message>
        <source>The drill so far</source>
        <translation>El ejercicio hasta ahora</translation>
    </message>
    <message>
        <source>No call was made.</source>
        <translation>No se hizo ningún dictamen.</translation>
    </message>
    <message>
        <source>Too few calls to say where you draw the line: {told} of {need}.</source>
        <translation>Muy pocos dictámenes para decir dónde traza la línea: {told} de {need}.</translation>
    </message>
    <message>
        <source>You call a weld short just where the limit is.</source>
        <translation>Usted da un cordón por escaso justo donde está el límite.</translation>
    </message>
    <message>
        <source>You call welds short up to {off} above the limit.</source>
        <translation>Usted da cordones por escasos hasta {off} por encima del límite.</translation>
    </message>
    <message>
        <source>You let welds pass down to {off} below the limit.</source>
        <translation>Usted deja pasar cordones hasta {off} por debajo del límite.</translation>
    </message>
    <message>
        <source>With 95 % confidence it lies between {low} and {high}.</source>
        <translation>Con un 95 % de confianza está entre {low} y {high}.</translation>
    </message>
    <message>
        <source>{length} below the limit</source>
        <translation>{length} por debajo del límite</translation>
    </message>
    <message>
        <source>{length} above the limit</source>
        <translation>{length} por encima del límite</translation>
    </message>
    <message>
        <source>Your line is blurred by {spread}, between {low} and {high}.</source>
        <translation>Su línea está borrosa en {spread}, entre {low} y {high}.</translation>
    </message>
    <message>
        <source>Drill, {made} calls made; where only one answer was right, {right} of {counted}.</source>
        <translation>Ejercicio, {made} dictámenes hechos; donde solo valía uno, {right} de {counted}.</translation>
    </message>
    <message>
        <source>Where only one answer was right, {right} of {counted} calls gave it.</source>
        <translation>Donde solo valía una respuesta, la dieron {right} de {counted} dictámenes.</translation>
    </message>
    <message>
        <source>All of them are in the logbook.</source>
        <translation>Todos están en el cuaderno.</translation>
    </message>
</context>
<context>
    <name>DrillDialog</name>
    <message>
        <source>Drill at your own edge</source>
        <translation>Ejercicio en su propio filo</translation>
    </message>
    <message>
        <source>One coupon after another, each where your call tells most of where you draw the line. It ends by itself when that is known, mostly after thirty to sixty calls. The first calls of a day come without any feedback: they are the honest measure.</source>
        <translation>Un cupón tras otro, cada uno donde su dictamen dice más de dónde traza usted la línea. Acaba por sí mismo cuando eso se sabe, casi siempre tras treinta a sesenta dictámenes. Los primeros del día vienen sin respuesta alguna: son la medida honrada.</translation>
    </message>
    <message>
        <source>Drawn in</source>
        <translation>Plano en</translation>
    </message>
    <message>
        <source>millimetres</source>
        <translation>milímetros</translation>
    </message>
    <message>
        <source>inches</source>
        <translation>pulgadas</translation>
    </message>
    <message>
        <source>Sized by</source>
        <translation>Medida por</translation>
    </message>
    <message>
        <source>leg (z)</source>
        <translation>cateto (z)</translation>
    </message>
    <message>
        <source>throat (a)</source>
        <translation>garganta (a)</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Reglas</translation>
    </message>
    <message>
        <source>Begin</source>
        <translation>Empezar</translation>
    </message>
</context>
<context>
    <name>Drilling</name>
    <message>
        <source>Make the call first: the next coupon depends on it.</source>
        <translation>Primero el dictamen: de él depende el cupón siguiente.</translation>
    </message>
    <message>
        <source>Drill</source>
        <translation>Ejercicio</translation>
    </message>
    <message>
        <source>End the drill</source>
        <translation>Acabar el ejercicio</translation>
    </message>
    <message>
        <source>No such coupon could be made</source>
        <translation>No se pudo hacer tal cupón</translation>
    </message>
</context>
<context>
    <name>EntrantsPanel</name>
    <message>
        <source>No learner has a code yet. Put them into the class first; or seal it without: then anybody may sit it, with a code that they type.</source>
        <translation>Ningún aprendiz tiene código todavía. Inclúyalos primero en la clase; o séllela así: entonces podrá hacerla cualquiera, con un código que escriba.</translation>
    </message>
    <message>
        <source>To the class</source>
        <translation>A la clase</translation>
    </message>
    <message>
        <source>Which learners are listed</source>
        <translation>Qué aprendices se muestran</translation>
    </message>
    <message>
        <source>Tick all</source>
        <translation>Marcar</translation>
    </message>
    <message>
        <source>Untick all</source>
        <translation>Desmarcar</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Código</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>Extra</source>
        <translation>Más</translation>
    </message>
    <message>
        <source>unknown here</source>
        <translation>sin nombre</translation>
    </message>
    <message>
        <source>Learners; those ticked sit it</source>
        <translation>Aprendices; los marcados hacen la prueba</translation>
    </message>
    <message>
        <source>Time more for those chosen above</source>
        <translation>Más tiempo para los elegidos arriba</translation>
    </message>
    <message>
        <source>none</source>
        <translation>nada</translation>
    </message>
    <message>
        <source>Time more: {share}</source>
        <translation>Más tiempo: {share}</translation>
    </message>
    <message>
        <source>Another share, %</source>
        <translation>Otra parte, %</translation>
    </message>
    <message>
        <source>Everybody</source>
        <translation>Todos</translation>
    </message>
    <message numerus="yes">
        <source>%n learner(s) sit it; nobody else may.</source>
        <translation>
            <numerusform>La hace %n aprendiz; nadie más puede.</numerusform>
            <numerusform>La hacen %n aprendices; nadie más puede.</numerusform>
        </translation>
    </message>
    <message>
        <source>Nobody is ticked: anybody may sit it, with a code that they type.</source>
        <translation>Nadie está marcado: puede hacerla cualquiera, con un código que escriba.</translation>
    </message>
    <message>
        <source>Right would be: 0 to 300</source>
        <translation>Sería correcto: de 0 a 300</translation>
    </message>
</context>
<context>
    <name>Exporting</name>
    <message>
        <source>There is nothing to write yet.</source>
        <translation>Aún no hay nada que escribir.</translation>
    </message>
    <message>
        <source>results</source>
        <translation>resultados</translation>
    </message>
    <message>
        <source>Reading from the server, and writing...</source>
        <translation>Leyendo del servidor y escribiendo...</translation>
    </message>
    <message>
        <source>It could not be written.</source>
        <translation>No se pudo escribir.</translation>
    </message>
    <message>
        <source>It is written</source>
        <translation>Está escrito</translation>
    </message>
    <message>
        <source>Save as</source>
        <translation>Guardar como</translation>
    </message>
</context>
<context>
    <name>FaultChoices</name>
    <message>
        <source>What is wrong with how the leaf is held?</source>
        <translation>¿Qué falla en cómo se sujeta la hoja?</translation>
    </message>
    <message>
        <source>What is wrong</source>
        <translation>Qué falla</translation>
    </message>
</context>
<context>
    <name>Faults</name>
    <message>
        <source>{key} is {leg} mm, so the toe does not lie on the {member}</source>
        <translation>{key} es {leg} mm, y el borde no queda sobre la pieza ({member})</translation>
    </message>
    <message>
        <source>more than {lowest} and less than {highest} mm</source>
        <translation>más de {lowest} y menos de {highest} mm</translation>
    </message>
    <message>
        <source>with crown {crown} mm the face enters a member</source>
        <translation>con una corona de {crown} mm la cara entra en una pieza</translation>
    </message>
    <message>
        <source>point {index} of the trace, ({x}, {y}), lies in a member</source>
        <translation>el punto {index} del trazado, ({x}; {y}), está dentro de una pieza</translation>
    </message>
    <message>
        <source>every point but the first and last in the air between the members</source>
        <translation>todos los puntos menos el primero y el último en el aire entre las piezas</translation>
    </message>
    <message>
        <source>the toe on the {member} has both an overlap and an undercut</source>
        <translation>el borde ({member}) tiene a la vez solape y mordedura</translation>
    </message>
    <message>
        <source>one of the two</source>
        <translation>una de las dos cosas</translation>
    </message>
    <message>
        <source>the face already hangs over the {member} where the lip would lie</source>
        <translation>la cara ya cuelga sobre la pieza ({member}) donde iría el labio</translation>
    </message>
    <message>
        <source>no overlap here, or a flatter face</source>
        <translation>aquí sin solape, o una cara más plana</translation>
    </message>
    <message>
        <source>{key} is {value} mm</source>
        <translation>{key} es {value} mm</translation>
    </message>
    <message>
        <source>more than 0 and at most {most} mm</source>
        <translation>más de 0 y {most} mm como máximo</translation>
    </message>
    <message>
        <source>the trace has {count} point(s)</source>
        <translation>puntos del trazado: {count}</translation>
    </message>
    <message>
        <source>two points or more</source>
        <translation>dos puntos o más</translation>
    </message>
    <message>
        <source>the trace ends {off} mm off the {member}&apos;s face</source>
        <translation>el trazado acaba a {off} mm de la cara de la pieza ({member})</translation>
    </message>
    <message>
        <source>within {limit} mm of it</source>
        <translation>a menos de {limit} mm de ella</translation>
    </message>
    <message>
        <source>the joint opens {angle} degrees</source>
        <translation>la unión abre {angle} grados</translation>
    </message>
    <message>
        <source>{lowest} to {highest} degrees</source>
        <translation>de {lowest} a {highest} grados</translation>
    </message>
    <message>
        <source>{lowest} to {highest} mm</source>
        <translation>de {lowest} a {highest} mm</translation>
    </message>
    <message>
        <source>the root opening is {value} mm</source>
        <translation>la separación en la raíz es de {value} mm</translation>
    </message>
    <message>
        <source>0 mm, or a nanometre (0.000001 mm) or more</source>
        <translation>0 mm, o un nanómetro (0,000001 mm) o más</translation>
    </message>
    <message>
        <source>an upright {thickness} mm thick, leaning at {angle} degrees, has no back left at {length} mm</source>
        <translation>un montante de {thickness} mm de espesor, inclinado a {angle} grados, no tiene dorso a {length} mm</translation>
    </message>
    <message>
        <source>more than {rear} mm</source>
        <translation>más de {rear} mm</translation>
    </message>
    <message>
        <source>the cap reaches from {near} to {far} mm</source>
        <translation>la gota va de {near} a {far} mm</translation>
    </message>
    <message>
        <source>its middle between {lowest} and {highest} mm, on bare {member}</source>
        <translation>su centro entre {lowest} y {highest} mm, en metal limpio ({member})</translation>
    </message>
    <message>
        <source>the cap lies over another one</source>
        <translation>la gota cae sobre otra</translation>
    </message>
    <message>
        <source>caps that stand apart</source>
        <translation>gotas separadas</translation>
    </message>
    <message>
        <source>{body} has no area</source>
        <translation>{body} no tiene área</translation>
    </message>
    <message>
        <source>a closed boundary</source>
        <translation>un contorno cerrado</translation>
    </message>
    <message>
        <source>{body} is open</source>
        <translation>{body} está abierto</translation>
    </message>
    <message>
        <source>pieces that meet</source>
        <translation>tramos que se unan</translation>
    </message>
    <message>
        <source>{body} is no simple outline</source>
        <translation>{body} no es un contorno simple</translation>
    </message>
    <message>
        <source>an outline that does not meet itself</source>
        <translation>un contorno que no se cruce</translation>
    </message>
    <message>
        <source>the file is larger than {mib} MiB</source>
        <translation>el archivo pasa de {mib} MiB</translation>
    </message>
    <message>
        <source>a smaller one</source>
        <translation>uno más pequeño</translation>
    </message>
    <message>
        <source>byte {byte} (0x{hex}) is not UTF-8</source>
        <translation>el byte {byte} (0x{hex}) no es UTF-8</translation>
    </message>
    <message>
        <source>text in UTF-8</source>
        <translation>texto en UTF-8</translation>
    </message>
    <message>
        <source>the file begins with a byte order mark</source>
        <translation>el archivo empieza con una marca de orden de bytes</translation>
    </message>
    <message>
        <source>UTF-8 without one</source>
        <translation>UTF-8 sin ella</translation>
    </message>
    <message>
        <source>lists and objects are nested more than {deepest} deep</source>
        <translation>listas y objetos anidados a más de {deepest} niveles</translation>
    </message>
    <message>
        <source>at most {deepest}</source>
        <translation>{deepest} como máximo</translation>
    </message>
    <message>
        <source>line {line}, column {column} can&apos;t be read as JSON: {what}, at {met}</source>
        <translation>línea {line}, columna {column}: no se puede leer como JSON: {what}, en {met}</translation>
    </message>
    <message>
        <source>JSON: keys and texts in double quotes, commas between values and none after the last</source>
        <translation>JSON: claves y textos entre comillas dobles, comas entre valores y ninguna tras el último</translation>
    </message>
    <message>
        <source>line {line}, column {column} can&apos;t be read as JSON: {what}</source>
        <translation>línea {line}, columna {column}: no se puede leer como JSON: {what}</translation>
    </message>
    <message>
        <source>{value} is no number that can be used</source>
        <translation>{value} no es un número utilizable</translation>
    </message>
    <message>
        <source>a finite number</source>
        <translation>un número finito</translation>
    </message>
    <message>
        <source>{body} has a value that is no number</source>
        <translation>{body} tiene un valor que no es un número</translation>
    </message>
    <message>
        <source>the key {named} is stated more than once</source>
        <translation>la clave {named} figura más de una vez</translation>
    </message>
    <message>
        <source>each key once</source>
        <translation>cada clave una vez</translation>
    </message>
    <message>
        <source>{value} holds half of a character</source>
        <translation>{value} contiene medio carácter</translation>
    </message>
    <message>
        <source>whole characters</source>
        <translation>caracteres enteros</translation>
    </message>
    <message>
        <source>the document is {value}</source>
        <translation>el documento es {value}</translation>
    </message>
    <message>
        <source>an object</source>
        <translation>un objeto</translation>
    </message>
    <message>
        <source>the format is {value}</source>
        <translation>el formato es {value}</translation>
    </message>
    <message>
        <source>no format is stated</source>
        <translation>no consta el formato</translation>
    </message>
    <message>
        <source>the version is {value}</source>
        <translation>la versión es {value}</translation>
    </message>
    <message>
        <source>a whole number from 1 to {head}</source>
        <translation>un número entero de 1 a {head}</translation>
    </message>
    <message>
        <source>no version is stated</source>
        <translation>no consta la versión</translation>
    </message>
    <message>
        <source>version {version} is newer than this program reads</source>
        <translation>la versión {version} es más nueva que las que lee este programa</translation>
    </message>
    <message>
        <source>{head}, or a newer program</source>
        <translation>{head}, o un programa más nuevo</translation>
    </message>
    <message>
        <source>the file can&apos;t be read: {reason}</source>
        <translation>no se puede leer el archivo: {reason}</translation>
    </message>
    <message>
        <source>a file that can be read</source>
        <translation>un archivo legible</translation>
    </message>
    <message>
        <source>the file can&apos;t be read: there is no such file</source>
        <translation>no se puede leer el archivo: no existe</translation>
    </message>
    <message>
        <source>the path of a file that exists</source>
        <translation>la ruta de un archivo que exista</translation>
    </message>
    <message>
        <source>the file can&apos;t be read: it is a folder</source>
        <translation>no se puede leer el archivo: es una carpeta</translation>
    </message>
    <message>
        <source>the path of a file in it</source>
        <translation>la ruta de un archivo dentro de ella</translation>
    </message>
    <message>
        <source>the file can&apos;t be read: this user may not read it</source>
        <translation>no se puede leer el archivo: este usuario no tiene permiso</translation>
    </message>
    <message>
        <source>a file that this user may read</source>
        <translation>un archivo que este usuario pueda leer</translation>
    </message>
    <message>
        <source>there are {more} faults more</source>
        <translation>defectos que faltan por enumerar: {more}</translation>
    </message>
    <message>
        <source>a file of another kind</source>
        <translation>un archivo de otro tipo</translation>
    </message>
    <message>
        <source>{named} is missing</source>
        <translation>falta {named}</translation>
    </message>
    <message>
        <source>an object with the key {named}</source>
        <translation>un objeto con la clave {named}</translation>
    </message>
    <message>
        <source>{named} is no key here</source>
        <translation>{named} no es una clave aquí</translation>
    </message>
    <message>
        <source>one of {known}, or a key that begins {prefix}</source>
        <translation>una de {known}, o una clave que empiece por {prefix}</translation>
    </message>
    <message>
        <source>is {value}</source>
        <translation>es {value}</translation>
    </message>
    <message>
        <source>more than {more_than}</source>
        <translation>más de {more_than}</translation>
    </message>
    <message>
        <source>{at_least} or more</source>
        <translation>{at_least} o más</translation>
    </message>
    <message>
        <source>less than {less_than}</source>
        <translation>menos de {less_than}</translation>
    </message>
    <message>
        <source>{at_most} or less</source>
        <translation>{at_most} o menos</translation>
    </message>
    <message>
        <source>has {values} values</source>
        <translation>tiene {values} valores</translation>
    </message>
    <message>
        <source>at least {at_least}</source>
        <translation>{at_least} como mínimo</translation>
    </message>
    <message>
        <source>at most {at_most}</source>
        <translation>{at_most} como máximo</translation>
    </message>
    <message>
        <source>has {characters} characters</source>
        <translation>tiene {characters} caracteres</translation>
    </message>
    <message>
        <source>at least {at_least} character</source>
        <translation>{at_least} carácter como mínimo</translation>
    </message>
    <message>
        <source>at most {at_most} characters</source>
        <translation>{at_most} caracteres como máximo</translation>
    </message>
    <message>
        <source>a number</source>
        <translation>un número</translation>
    </message>
    <message>
        <source>a whole number</source>
        <translation>un número entero</translation>
    </message>
    <message>
        <source>true or false</source>
        <translation>true o false</translation>
    </message>
    <message>
        <source>text</source>
        <translation>texto</translation>
    </message>
    <message>
        <source>a list</source>
        <translation>una lista</translation>
    </message>
    <message>
        <source>the text in {tag} is {value}</source>
        <translation>el texto en {tag} es {value}</translation>
    </message>
    <message>
        <source>text, or an object of texts by language such as {sample}</source>
        <translation>texto, o un objeto de textos por idioma como {sample}</translation>
    </message>
    <message>
        <source>is an empty object</source>
        <translation>es un objeto vacío</translation>
    </message>
    <message>
        <source>{tag} is no language tag</source>
        <translation>{tag} no es una etiqueta de idioma</translation>
    </message>
    <message>
        <source>has {count} characters</source>
        <translation>tiene {count} caracteres</translation>
    </message>
    <message>
        <source>{stated} is no length with its unit</source>
        <translation>{stated} no es una longitud con su unidad</translation>
    </message>
    <message>
        <source>a length above 0 and at most {largest} mm, as 8, &quot;8 mm&quot; or &quot;5/16 in&quot;</source>
        <translation>una longitud mayor que 0 y de {largest} mm como máximo, como 8, &quot;8 mm&quot; o &quot;5/16 in&quot;</translation>
    </message>
    <message>
        <source>{mark} has no unit</source>
        <translation>{mark} no tiene unidad</translation>
    </message>
    <message>
        <source>no rack has a leaf {mark}</source>
        <translation>ningún juego tiene una hoja {mark}</translation>
    </message>
    <message>
        <source>one of: {known}</source>
        <translation>una de: {known}</translation>
    </message>
    <message>
        <source>a mark such as &quot;8 mm&quot;, &quot;5/16 in&quot;, &quot;a 4 mm&quot;</source>
        <translation>una marca como &quot;8 mm&quot;, &quot;5/16 in&quot;, &quot;a 4 mm&quot;</translation>
    </message>
    <message>
        <source>the file is empty</source>
        <translation>el archivo está vacío</translation>
    </message>
    <message>
        <source>a first line with &quot;format&quot;: &quot;{expected}&quot; and &quot;version&quot;</source>
        <translation>una primera línea con &quot;format&quot;: &quot;{expected}&quot; y &quot;version&quot;</translation>
    </message>
    <message>
        <source>the tray has no coupon {named}</source>
        <translation>la bandeja no tiene ningún cupón {named}</translation>
    </message>
    <message>
        <source>no rule set is called {rules}</source>
        <translation>ningún juego de reglas se llama {rules}</translation>
    </message>
    <message>
        <source>{named} is the id of coupon {other} too</source>
        <translation>{named} es también el id del cupón {other}</translation>
    </message>
    <message>
        <source>an id of its own</source>
        <translation>un id propio</translation>
    </message>
    <message>
        <source>no finite number</source>
        <translation>un número no finito</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>there is nothing here</source>
        <translation>aquí no hay nada</translation>
    </message>
    <message>
        <source>expecting value</source>
        <translation>se esperaba un valor</translation>
    </message>
    <message>
        <source>expecting property name enclosed in double quotes</source>
        <translation>se esperaba una clave entre comillas dobles</translation>
    </message>
    <message>
        <source>expecting &apos;:&apos; delimiter</source>
        <translation>se esperaba &apos;:&apos;</translation>
    </message>
    <message>
        <source>expecting &apos;,&apos; delimiter</source>
        <translation>se esperaba &apos;,&apos;</translation>
    </message>
    <message>
        <source>extra data</source>
        <translation>sobran datos</translation>
    </message>
    <message>
        <source>its end</source>
        <translation>su final</translation>
    </message>
    <message>
        <source>the base leg</source>
        <translation>el cateto de la base</translation>
    </message>
    <message>
        <source>the upright leg</source>
        <translation>el cateto del montante</translation>
    </message>
    <message>
        <source>the width</source>
        <translation>la anchura</translation>
    </message>
    <message>
        <source>the depth</source>
        <translation>la profundidad</translation>
    </message>
    <message>
        <source>the length</source>
        <translation>la longitud</translation>
    </message>
    <message>
        <source>the height</source>
        <translation>la altura</translation>
    </message>
    <message>
        <source>the leaf&apos;s wear</source>
        <translation>el desgaste de la hoja</translation>
    </message>
    <message>
        <source>the base&apos;s thickness</source>
        <translation>el espesor de la base</translation>
    </message>
    <message>
        <source>the upright&apos;s thickness</source>
        <translation>el espesor del montante</translation>
    </message>
    <message>
        <source>the base&apos;s length</source>
        <translation>la longitud de la base</translation>
    </message>
    <message>
        <source>the upright&apos;s length</source>
        <translation>la longitud del montante</translation>
    </message>
    <message>
        <source>the photo&apos;s left edge</source>
        <translation>el borde izquierdo de la foto</translation>
    </message>
    <message>
        <source>the photo&apos;s upper edge</source>
        <translation>el borde superior de la foto</translation>
    </message>
    <message>
        <source>a pixel of the photo, in mm,</source>
        <translation>un píxel de la foto, en mm,</translation>
    </message>
    <message>
        <source>no leaf is placed that could be judged</source>
        <translation>no hay ninguna hoja puesta que juzgar</translation>
    </message>
    <message>
        <source>a key &quot;placed&quot;</source>
        <translation>una clave &quot;placed&quot;</translation>
    </message>
    <message>
        <source>the throat edge is turned over</source>
        <translation>el canto de garganta está volteado</translation>
    </message>
    <message>
        <source>false: it lies the same on either member</source>
        <translation>false: queda igual en cualquiera de las piezas</translation>
    </message>
    <message>
        <source>the leaf stands {depth} mm inside steel</source>
        <translation>la hoja entra {depth} mm en el acero</translation>
    </message>
    <message>
        <source>a pose that enters no steel</source>
        <translation>una posición que no entre en el acero</translation>
    </message>
    <message>
        <source>the leaf touches nothing</source>
        <translation>la hoja no toca nada</translation>
    </message>
    <message>
        <source>a pose in which it touches steel</source>
        <translation>una posición en que toque el acero</translation>
    </message>
    <message>
        <source>no leaf can settle the size of this weld</source>
        <translation>ninguna hoja puede decidir la medida de este cordón</translation>
    </message>
    <message>
        <source>a weld that a leaf can settle</source>
        <translation>un cordón que una hoja pueda decidir</translation>
    </message>
    <message>
        <source>the leaf isn&apos;t home, and no answer says so</source>
        <translation>la hoja no está arrimada, y ninguna respuesta lo dice</translation>
    </message>
    <message>
        <source>a leaf that is home, tilted, or on spatter</source>
        <translation>una hoja arrimada, inclinada o sobre una salpicadura</translation>
    </message>
    <message>
        <source>the line has no direction</source>
        <translation>la línea no tiene dirección</translation>
    </message>
    <message>
        <source>two distinct points</source>
        <translation>dos puntos distintos</translation>
    </message>
    <message>
        <source>the points lie on no circle of that radius</source>
        <translation>los puntos no están en ningún círculo de ese radio</translation>
    </message>
    <message>
        <source>a larger radius</source>
        <translation>un radio mayor</translation>
    </message>
    <message>
        <source>{body} has a piece of no length</source>
        <translation>{body} tiene un tramo sin longitud</translation>
    </message>
    <message>
        <source>distinct points</source>
        <translation>puntos distintos</translation>
    </message>
    <message>
        <source>the leaf has no such edge</source>
        <translation>la hoja no tiene ese canto</translation>
    </message>
    <message>
        <source>leg or throat</source>
        <translation>leg o throat</translation>
    </message>
    <message>
        <source>({x}, {y}) is no place</source>
        <translation>({x}; {y}) no es un lugar</translation>
    </message>
    <message>
        <source>a place nearer to the section</source>
        <translation>un lugar más cercano a la sección</translation>
    </message>
    <message>
        <source>is no length</source>
        <translation>no es una longitud</translation>
    </message>
    <message>
        <source>a length such as 8 mm or 5/16 in</source>
        <translation>una longitud como 8 mm o 5/16 in</translation>
    </message>
    <message>
        <source>no rack has such a leaf</source>
        <translation>ningún juego tiene esa hoja</translation>
    </message>
    <message>
        <source>the mark of a leaf, with its unit</source>
        <translation>la marca de una hoja, con su unidad</translation>
    </message>
    <message>
        <source>there is no such rack</source>
        <translation>no hay tal juego</translation>
    </message>
    <message>
        <source>metric, inch or throat</source>
        <translation>metric, inch o throat</translation>
    </message>
    <message>
        <source>the eye limit is no length above 0 mm</source>
        <translation>el límite del ojo no es una longitud mayor que 0 mm</translation>
    </message>
    <message>
        <source>a length above 0 mm</source>
        <translation>una longitud mayor que 0 mm</translation>
    </message>
    <message>
        <source>the spatter is on neither member</source>
        <translation>la salpicadura no está en ninguna de las piezas</translation>
    </message>
    <message>
        <source>base or upright</source>
        <translation>base o upright</translation>
    </message>
    <message>
        <source>is no number</source>
        <translation>no es un número</translation>
    </message>
    <message>
        <source>the leaf can&apos;t have that size</source>
        <translation>la hoja no puede tener ese tamaño</translation>
    </message>
    <message>
        <source>a size of a rack</source>
        <translation>un tamaño de un juego</translation>
    </message>
    <message>
        <source>one of {known}</source>
        <translation>una de {known}</translation>
    </message>
    <message>
        <source>has {keys}</source>
        <translation>tiene {keys}</translation>
    </message>
    <message>
        <source>a throat has no second leg</source>
        <translation>una garganta no tiene segundo cateto</translation>
    </message>
    <message>
        <source>no such key, or &quot;measure&quot;: &quot;leg&quot;</source>
        <translation>sin esa clave, o &quot;measure&quot;: &quot;leg&quot;</translation>
    </message>
    <message>
        <source>says the spacing in no way, or in two</source>
        <translation>no dice la separación, o la dice dos veces</translation>
    </message>
    <message>
        <source>either &quot;pitch&quot; or &quot;gap&quot;</source>
        <translation>o &quot;pitch&quot; o &quot;gap&quot;</translation>
    </message>
    <message>
        <source>the pitch is {pitch}, no more than a piece is long</source>
        <translation>el paso es {pitch}, no mayor que un tramo</translation>
    </message>
    <message>
        <source>more than {length}, from centre to centre</source>
        <translation>más de {length}, entre centros</translation>
    </message>
    <message>
        <source>degrees from 0 to 180</source>
        <translation>grados de 0 a 180</translation>
    </message>
    <message>
        <source>&quot;{id}&quot; is the id of a rule set that ships</source>
        <translation>&quot;{id}&quot; es el id de un juego de reglas incluido</translation>
    </message>
    <message>
        <source>an id of your own</source>
        <translation>un id propio</translation>
    </message>
    <message>
        <source>&quot;{key}&quot; says nothing of &quot;{measure}&quot;</source>
        <translation>&quot;{key}&quot; no dice nada de &quot;{measure}&quot;</translation>
    </message>
    <message>
        <source>&quot;short&quot; and &quot;within&quot; belong together</source>
        <translation>&quot;short&quot; y &quot;within&quot; van juntas</translation>
    </message>
    <message>
        <source>both, or neither</source>
        <translation>ambas, o ninguna</translation>
    </message>
    <message>
        <source>the length is none, or more than what it is in</source>
        <translation>la longitud es nula, o mayor que aquello en que está</translation>
    </message>
    <message>
        <source>a &quot;length&quot; above 0, and no more than &quot;each&quot;</source>
        <translation>una &quot;length&quot; mayor que 0, y no mayor que &quot;each&quot;</translation>
    </message>
    <message>
        <source>says the share in no way, or in two</source>
        <translation>no dice la parte, o la dice dos veces</translation>
    </message>
    <message>
        <source>&quot;share&quot;; or &quot;length&quot; and &quot;each&quot;</source>
        <translation>&quot;share&quot;; o &quot;length&quot; y &quot;each&quot;</translation>
    </message>
    <message>
        <source>&quot;{measure}&quot; is limited twice</source>
        <translation>&quot;{measure}&quot; está limitada dos veces</translation>
    </message>
    <message>
        <source>one limit for each</source>
        <translation>un límite para cada una</translation>
    </message>
    <message>
        <source>{rules} is the id of another of these files too</source>
        <translation>{rules} es también el id de otro de estos archivos</translation>
    </message>
    <message>
        <source>{name} is no plain name of a rules file</source>
        <translation>{name} no es un simple nombre de archivo de reglas</translation>
    </message>
    <message>
        <source>the name of a file beside the tray, as &quot;shop.rules.json&quot;</source>
        <translation>el nombre de un archivo junto a la bandeja, como &quot;shop.rules.json&quot;</translation>
    </message>
    <message>
        <source>{name} can&apos;t be looked for: the tray has no folder</source>
        <translation>{name} no se puede buscar: la bandeja no tiene carpeta</translation>
    </message>
    <message>
        <source>a tray that is read from a file</source>
        <translation>una bandeja leída de un archivo</translation>
    </message>
    <message>
        <source>{key} is a key of version {version}</source>
        <translation>{key} es una clave de la versión {version}</translation>
    </message>
    <message>
        <source>no weld was found whose right call is {disposition}</source>
        <translation>no se halló ningún cordón cuyo dictamen correcto sea {disposition}</translation>
    </message>
    <message>
        <source>another rule set, more faces, more traps, or sizes farther from their limits</source>
        <translation>otro juego de reglas, más caras, más trampas, o tamaños más lejos de sus límites</translation>
    </message>
    <message>
        <source>{count} coupons, {doubtful} in doubt, with {answers} kinds of answer are uneven</source>
        <translation>{count} cupones, {doubtful} en duda, con {answers} clases de respuesta no se pueden equilibrar</translation>
    </message>
    <message>
        <source>more coupons, fewer in doubt, or the traps overlap and out of square as well</source>
        <translation>más cupones, menos en duda, o también las trampas de solape y fuera de escuadra</translation>
    </message>
    <message>
        <source>{count} coupons</source>
        <translation>{count} cupones</translation>
    </message>
    <message>
        <source>1 to {most}</source>
        <translation>de 1 a {most}</translation>
    </message>
    <message>
        <source>no rule set is called {value}</source>
        <translation>ningún juego de reglas se llama {value}</translation>
    </message>
    <message>
        <source>a rule set that there is</source>
        <translation>un juego de reglas que exista</translation>
    </message>
    <message>
        <source>no face is named</source>
        <translation>no se nombra ninguna cara</translation>
    </message>
    <message>
        <source>one face or more</source>
        <translation>una cara o más</translation>
    </message>
    <message>
        <source>sizes from {low} to {high} mm</source>
        <translation>tamaños de {low} a {high} mm</translation>
    </message>
    <message>
        <source>from 3 to 25 mm, the lesser first</source>
        <translation>de 3 a 25 mm, el menor primero</translation>
    </message>
    <message>
        <source>the nearest size lies {value} doubts off its limit</source>
        <translation>el tamaño más cercano está a {value} dudas de su límite</translation>
    </message>
    <message>
        <source>a number of doubts that a leaf can tell</source>
        <translation>un número de dudas que una hoja distinga</translation>
    </message>
    <message>
        <source>the farthest size lies {value} doubts off its limit</source>
        <translation>el tamaño más lejano está a {value} dudas de su límite</translation>
    </message>
    <message>
        <source>half a doubt farther than the nearest, or more</source>
        <translation>media duda más lejos que el más cercano, o más</translation>
    </message>
    <message>
        <source>too many coupons, or too few, in doubt</source>
        <translation>demasiados cupones en duda, o muy pocos</translation>
    </message>
    <message>
        <source>0 to 30 %</source>
        <translation>de 0 a 30 %</translation>
    </message>
    <message>
        <source>a number above 0</source>
        <translation>un número mayor que 0</translation>
    </message>
    <message>
        <source>a list of rows</source>
        <translation>una lista de filas</translation>
    </message>
    <message>
        <source>a list of amounts</source>
        <translation>una lista de cantidades</translation>
    </message>
    <message>
        <source>an object with &quot;amount&quot;</source>
        <translation>un objeto con &quot;amount&quot;</translation>
    </message>
    <message>
        <source>&quot;amount&quot; alone, for all the rest</source>
        <translation>solo &quot;amount&quot;, para todo lo demás</translation>
    </message>
    <message>
        <source>either &quot;up_to&quot; or &quot;below&quot;</source>
        <translation>o &quot;up_to&quot; o &quot;below&quot;</translation>
    </message>
    <message>
        <source>mm, &quot;1/16 in&quot;, or both columns as {&quot;mm&quot;: 2, &quot;in&quot;: &quot;1/16 in&quot;}</source>
        <translation>mm, &quot;1/16 in&quot;, o ambas columnas como {&quot;mm&quot;: 2, &quot;in&quot;: &quot;1/16 in&quot;}</translation>
    </message>
    <message>
        <source> or </source>
        <translation> o </translation>
    </message>
    <message>
        <source>the picture is not in base 64</source>
        <translation>la foto no está en base 64</translation>
    </message>
    <message>
        <source>a JPEG in base 64 (RFC 4648), without line breaks</source>
        <translation>un JPEG en base 64 (RFC 4648), sin saltos de línea</translation>
    </message>
    <message>
        <source>the picture is no JPEG</source>
        <translation>la foto no es un JPEG</translation>
    </message>
    <message>
        <source>a JPEG</source>
        <translation>un JPEG</translation>
    </message>
    <message>
        <source>the picture is cut short</source>
        <translation>la foto está cortada</translation>
    </message>
    <message>
        <source>the whole of it</source>
        <translation>la foto entera</translation>
    </message>
    <message>
        <source>the picture has {width} by {height} pixels</source>
        <translation>la foto tiene {width} por {height} píxeles</translation>
    </message>
    <message>
        <source>at most {at_most} by {at_most}</source>
        <translation>como mucho {at_most} por {at_most}</translation>
    </message>
    <message>
        <source>the picture is {kib} KiB long</source>
        <translation>la foto ocupa {kib} KiB</translation>
    </message>
    <message>
        <source>at most {at_most} KiB</source>
        <translation>como mucho {at_most} KiB</translation>
    </message>
    <message>
        <source>{key} is {value}</source>
        <translation>{key} vale {value}</translation>
    </message>
    <message>
        <source>from {least} to {most} mm</source>
        <translation>de {least} a {most} mm</translation>
    </message>
    <message>
        <source>this is no picture that can be read</source>
        <translation>no es una foto que se pueda leer</translation>
    </message>
    <message>
        <source>PNG, JPEG, TIFF or WebP</source>
        <translation>PNG, JPEG, TIFF o WebP</translation>
    </message>
    <message>
        <source>the picture has {megapixels} megapixels</source>
        <translation>la foto tiene {megapixels} megapíxeles</translation>
    </message>
    <message>
        <source>sides of {least} to {most} pixels</source>
        <translation>lados de {least} a {most} píxeles</translation>
    </message>
    <message>
        <source>the whole file, copied or saved again</source>
        <translation>el archivo entero, copiado o guardado de nuevo</translation>
    </message>
    <message>
        <source>the picture is broken</source>
        <translation>la foto está dañada</translation>
    </message>
    <message>
        <source>the file, copied or saved again</source>
        <translation>el archivo copiado o guardado de nuevo</translation>
    </message>
    <message>
        <source>there is too little memory for the picture</source>
        <translation>no hay memoria suficiente para la foto</translation>
    </message>
    <message>
        <source>the four points are no rectangle seen askew</source>
        <translation>los cuatro puntos no son un rectángulo visto en perspectiva</translation>
    </message>
    <message>
        <source>the corners of one</source>
        <translation>las esquinas de uno</translation>
    </message>
    <message>
        <source>the rectangle&apos;s sides are not known</source>
        <translation>no se conocen los lados del rectángulo</translation>
    </message>
    <message>
        <source>their lengths, or their ratio</source>
        <translation>sus longitudes o su proporción</translation>
    </message>
    <message>
        <source>no length is known</source>
        <translation>no se conoce ninguna longitud</translation>
    </message>
    <message>
        <source>two points and the length between them</source>
        <translation>dos puntos y la longitud entre ellos</translation>
    </message>
    <message>
        <source>the two points of the length lie together</source>
        <translation>los dos puntos de la longitud están juntos</translation>
    </message>
    <message>
        <source>two that are apart</source>
        <translation>dos que estén separados</translation>
    </message>
    <message>
        <source>the {member}&apos;s face is not marked</source>
        <translation>no está marcada la cara: {member}</translation>
    </message>
    <message>
        <source>two points on it, or more</source>
        <translation>dos puntos en ella o más</translation>
    </message>
    <message>
        <source>the members are parallel</source>
        <translation>las piezas son paralelas</translation>
    </message>
    <message>
        <source>two that meet at a root</source>
        <translation>dos que se encuentren en una raíz</translation>
    </message>
    <message>
        <source>the members meet at {angle} degrees</source>
        <translation>las piezas se encuentran a {angle} grados</translation>
    </message>
    <message>
        <source>the face is not traced</source>
        <translation>la cara no está trazada</translation>
    </message>
    <message>
        <source>two points on it or more, from toe to toe</source>
        <translation>dos puntos en ella o más, de borde a borde</translation>
    </message>
    <message>
        <source>the face meets no member</source>
        <translation>la cara no llega a ninguna pieza</translation>
    </message>
    <message>
        <source>a trace from one member to the other</source>
        <translation>un trazo de una pieza a la otra</translation>
    </message>
    <message>
        <source>a smaller one: one profile, or every tenth point</source>
        <translation>uno menor: un solo perfil, o un punto de cada diez</translation>
    </message>
    <message>
        <source>there is nothing in it</source>
        <translation>no contiene nada</translation>
    </message>
    <message>
        <source>two columns of numbers, x and z</source>
        <translation>dos columnas de números, x y z</translation>
    </message>
    <message>
        <source>this is {what}, not text</source>
        <translation>esto es {what}, no texto</translation>
    </message>
    <message>
        <source>points as text (CSV, TSV), or an outline as DXF or SVG</source>
        <translation>puntos como texto (CSV, TSV), o un contorno en DXF o SVG</translation>
    </message>
    <message>
        <source>byte {byte} (0x{hex}) is in no text</source>
        <translation>el byte {byte} (0x{hex}) no es de ningún texto</translation>
    </message>
    <message>
        <source>byte {byte} (0x{hex}) fits no encoding of text</source>
        <translation>el byte {byte} (0x{hex}) no encaja en ninguna codificación de texto</translation>
    </message>
    <message>
        <source>no line holds two numbers; the first reads {first}</source>
        <translation>ninguna línea tiene dos números; la primera dice {first}</translation>
    </message>
    <message>
        <source>two columns of numbers, x and z, with a comma, semicolon, tab or blank between them</source>
        <translation>dos columnas de números, x y z, separadas por coma, punto y coma, tabulador o espacio</translation>
    </message>
    <message>
        <source>there is no column {column} beside another</source>
        <translation>no hay columna {column} junto a otra</translation>
    </message>
    <message>
        <source>two of the columns 1 to {columns}</source>
        <translation>dos de las columnas 1 a {columns}</translation>
    </message>
    <message>
        <source>there are more than {count} points</source>
        <translation>hay más de {count} puntos</translation>
    </message>
    <message>
        <source>one profile, or every tenth point</source>
        <translation>un solo perfil, o un punto de cada diez</translation>
    </message>
    <message>
        <source>commas part whole numbers: columns, or decimals?</source>
        <translation>las comas separan números enteros: ¿columnas o decimales?</translation>
    </message>
    <message>
        <source>semicolons or tabs between the columns, or decimal points</source>
        <translation>punto y coma o tabulador entre columnas, o puntos decimales</translation>
    </message>
    <message>
        <source>{value} is no number</source>
        <translation>{value} no es un número</translation>
    </message>
    <message>
        <source>a number, or NaN for a drop-out</source>
        <translation>un número, o NaN donde no se vio nada</translation>
    </message>
    <message>
        <source>the row has {count} of {columns} columns</source>
        <translation>la fila tiene {count} de {columns} columnas</translation>
    </message>
    <message>
        <source>{columns} columns in every row</source>
        <translation>{columns} columnas en cada fila</translation>
    </message>
    <message>
        <source>{count} more rows could not be read</source>
        <translation>otras {count} filas no se pudieron leer</translation>
    </message>
    <message>
        <source>the drawing has more than {outlines} outlines or {points} points</source>
        <translation>el dibujo tiene más de {outlines} contornos o {points} puntos</translation>
    </message>
    <message>
        <source>a drawing of one section</source>
        <translation>el dibujo de una sola sección</translation>
    </message>
    <message>
        <source>drawings of this kind can&apos;t be read here</source>
        <translation>aquí no se pueden leer dibujos de esta clase</translation>
    </message>
    <message>
        <source>the extra: toe-and-throat[{extra}]</source>
        <translation>el complemento: toe-and-throat[{extra}]</translation>
    </message>
    <message>
        <source>this is a binary DXF</source>
        <translation>esto es un DXF binario</translation>
    </message>
    <message>
        <source>the drawing saved as DXF in text (ASCII)</source>
        <translation>el dibujo guardado como DXF de texto (ASCII)</translation>
    </message>
    <message>
        <source>this can&apos;t be read as DXF: {reason}</source>
        <translation>esto no se puede leer como DXF: {reason}</translation>
    </message>
    <message>
        <source>a DXF drawing, of any version, saved anew by the program that made it</source>
        <translation>un dibujo DXF, de cualquier versión, guardado de nuevo por el programa que lo hizo</translation>
    </message>
    <message>
        <source>the drawing holds no line, arc, polyline or spline</source>
        <translation>el dibujo no contiene línea, arco, polilínea ni spline</translation>
    </message>
    <message>
        <source>the section&apos;s outline as lines, arcs, polylines or splines in model space</source>
        <translation>el contorno de la sección en líneas, arcos, polilíneas o splines en el espacio modelo</translation>
    </message>
    <message>
        <source>the drawing holds no path or shape</source>
        <translation>el dibujo no contiene trazado ni figura</translation>
    </message>
    <message>
        <source>the section&apos;s outline as a path or a polyline; text and pictures are none</source>
        <translation>el contorno de la sección como trazado o polilínea; textos e imágenes no lo son</translation>
    </message>
    <message>
        <source>{count} of kind {kind_of} left out</source>
        <translation>{count} de clase {kind_of} sin tomar</translation>
    </message>
    <message>
        <source>paths, lines, arcs, polylines, shapes or splines</source>
        <translation>trazados, líneas, arcos, polilíneas, figuras o splines</translation>
    </message>
    <message>
        <source>the file defines entities, which could grow without bound</source>
        <translation>el archivo define entidades, que podrían crecer sin límite</translation>
    </message>
    <message>
        <source>an SVG without &lt;!ENTITY ...&gt; in it</source>
        <translation>un SVG sin &lt;!ENTITY ...&gt;</translation>
    </message>
    <message>
        <source>line {line}, column {column} can&apos;t be read as XML</source>
        <translation>la línea {line}, columna {column} no se puede leer como XML</translation>
    </message>
    <message>
        <source>a whole, well-formed SVG file</source>
        <translation>un archivo SVG entero y bien formado</translation>
    </message>
    <message>
        <source>the file&apos;s encoding can&apos;t be read as XML</source>
        <translation>la codificación del archivo no se puede leer como XML</translation>
    </message>
    <message>
        <source>an SVG file in UTF-8</source>
        <translation>un archivo SVG en UTF-8</translation>
    </message>
    <message>
        <source>the document is &lt;{tag}&gt;, not &lt;svg&gt;</source>
        <translation>el documento es &lt;{tag}&gt;, no &lt;svg&gt;</translation>
    </message>
    <message>
        <source>an SVG drawing</source>
        <translation>un dibujo SVG</translation>
    </message>
    <message>
        <source>only {count} points are left to fit to</source>
        <translation>solo quedan {count} puntos a los que ajustar</translation>
    </message>
    <message>
        <source>{least} or more, over both members and the face</source>
        <translation>{least} o más, sobre ambas piezas y la cara</translation>
    </message>
    <message>
        <source>the points reach over {size} mm</source>
        <translation>los puntos abarcan {size} mm</translation>
    </message>
    <message>
        <source>a section of {lowest} to {highest} mm; is the unit the right one?</source>
        <translation>una sección de {lowest} a {highest} mm; ¿es correcta la unidad?</translation>
    </message>
    <message>
        <source>no straight stretch is long enough to be a member</source>
        <translation>ningún tramo recto es bastante largo para ser una pieza</translation>
    </message>
    <message>
        <source>a few millimetres of both members&apos; bare faces beside the weld</source>
        <translation>unos milímetros de la cara desnuda de ambas piezas junto al cordón</translation>
    </message>
    <message>
        <source>only one member was found, not two with a face between</source>
        <translation>solo se halló una pieza, no dos con una cara entre ellas</translation>
    </message>
    <message>
        <source>the members stand at {angle} degrees</source>
        <translation>las piezas forman {angle} grados</translation>
    </message>
    <message>
        <source>between the members there is no face</source>
        <translation>entre las piezas no hay cara</translation>
    </message>
    <message>
        <source>points from one member over the weld to the other</source>
        <translation>puntos de una pieza a la otra pasando por el cordón</translation>
    </message>
    <message>
        <source>nothing was seen of {gap} mm of the face</source>
        <translation>de {gap} mm de la cara no se vio nada</translation>
    </message>
    <message>
        <source>points there; it is bridged straight</source>
        <translation>puntos allí; se salva en línea recta</translation>
    </message>
    <message>
        <source>the face takes {count} points within {tolerance} mm</source>
        <translation>la cara necesita {count} puntos con {tolerance} mm</translation>
    </message>
    <message>
        <source>at most {most}: a larger tolerance</source>
        <translation>{most} como mucho: una tolerancia mayor</translation>
    </message>
    <message>
        <source>a PNG picture</source>
        <translation>una imagen PNG</translation>
    </message>
    <message>
        <source>a JPEG picture</source>
        <translation>una imagen JPEG</translation>
    </message>
    <message>
        <source>a zip archive or a spreadsheet</source>
        <translation>un archivo zip o una hoja de cálculo</translation>
    </message>
    <message>
        <source>an old spreadsheet or document</source>
        <translation>una hoja de cálculo o un documento antiguos</translation>
    </message>
    <message>
        <source>a PDF</source>
        <translation>un PDF</translation>
    </message>
    <message>
        <source>a DWG drawing</source>
        <translation>un dibujo DWG</translation>
    </message>
    <message>
        <source>a gzip archive</source>
        <translation>un archivo gzip</translation>
    </message>
    <message>
        <source>the id is {value}</source>
        <translation>el identificador es {value}</translation>
    </message>
    <message>
        <source>1 to {most} characters that can be seen</source>
        <translation>de 1 a {most} caracteres visibles</translation>
    </message>
    <message>
        <source>{value} is mistyped</source>
        <translation>{value} está mal escrito</translation>
    </message>
    <message>
        <source>the code as it was given out</source>
        <translation>el código tal como se entregó</translation>
    </message>
    <message>
        <source>{value} is another learner&apos;s code</source>
        <translation>{value} es el código de otra persona</translation>
    </message>
    <message>
        <source>{value} is the code of line {line} too</source>
        <translation>{value} es también el código de la línea {line}</translation>
    </message>
    <message>
        <source>what was done as {value} was handed in or sent</source>
        <translation>lo hecho como {value} ya se entregó o se envió</translation>
    </message>
    <message>
        <source>the same code, or another learner</source>
        <translation>el mismo código, u otra persona</translation>
    </message>
    <message>
        <source>at most {most} at once</source>
        <translation>{most} como máximo a la vez</translation>
    </message>
    <message>
        <source>no learner is named</source>
        <translation>no se nombra a nadie</translation>
    </message>
    <message>
        <source>a line for each</source>
        <translation>una línea para cada uno</translation>
    </message>
    <message>
        <source>the name is too long</source>
        <translation>el nombre es demasiado largo</translation>
    </message>
    <message>
        <source>at most {most} characters</source>
        <translation>{most} caracteres como máximo</translation>
    </message>
    <message>
        <source>line {line} is called {value} too</source>
        <translation>la línea {line} también se llama {value}</translation>
    </message>
    <message>
        <source>a name that tells them apart</source>
        <translation>un nombre que los distinga</translation>
    </message>
    <message>
        <source>another learner is called {value}</source>
        <translation>otra persona se llama {value}</translation>
    </message>
    <message>
        <source>the logbook is shut</source>
        <translation>el cuaderno está cerrado</translation>
    </message>
    <message>
        <source>a logbook that can be opened</source>
        <translation>un cuaderno que pueda abrirse</translation>
    </message>
    <message>
        <source>a code or a name is another learner&apos;s</source>
        <translation>un código o un nombre es de otra persona</translation>
    </message>
    <message>
        <source>others</source>
        <translation>otros</translation>
    </message>
    <message>
        <source>the group has no name that can be shown</source>
        <translation>el grupo no tiene un nombre que pueda mostrarse</translation>
    </message>
    <message>
        <source>1 to {most} characters</source>
        <translation>de 1 a {most} caracteres</translation>
    </message>
    <message>
        <source>{value} days are to be kept</source>
        <translation>se guardarían {value} días</translation>
    </message>
    <message>
        <source>1 to {most} days, or for good</source>
        <translation>de 1 a {most} días, o para siempre</translation>
    </message>
    <message>
        <source>there is a group {value} already</source>
        <translation>ya hay un grupo {value}</translation>
    </message>
    <message>
        <source>another name</source>
        <translation>otro nombre</translation>
    </message>
    <message>
        <source>the sitting has no title</source>
        <translation>la prueba no tiene título</translation>
    </message>
    <message>
        <source>a title</source>
        <translation>un título</translation>
    </message>
    <message>
        <source>the seed is {value}</source>
        <translation>la semilla es {value}</translation>
    </message>
    <message>
        <source>0 to {most}</source>
        <translation>de 0 a {most}</translation>
    </message>
    <message>
        <source>nothing is asked</source>
        <translation>no se pregunta nada</translation>
    </message>
    <message>
        <source>coupons of a tray, or dice</source>
        <translation>cupones de una bandeja, o dados</translation>
    </message>
    <message>
        <source>says what is asked in no way, or in two</source>
        <translation>no dice qué se pregunta, o lo dice de dos maneras</translation>
    </message>
    <message>
        <source>either &quot;tray&quot; or &quot;recipe&quot;</source>
        <translation>&quot;tray&quot; o bien &quot;recipe&quot;</translation>
    </message>
    <message>
        <source>no coupon is chosen</source>
        <translation>no se ha elegido ningún cupón</translation>
    </message>
    <message>
        <source>one coupon or more</source>
        <translation>uno o más cupones</translation>
    </message>
    <message>
        <source>the shop&apos;s rules {rules} don&apos;t come with the coupons</source>
        <translation>las reglas del taller {rules} no vienen con los cupones</translation>
    </message>
    <message>
        <source>the coupons with their rules files</source>
        <translation>los cupones con sus archivos de reglas</translation>
    </message>
    <message>
        <source>{rules} is the id of another of these rule sets too</source>
        <translation>{rules} es también el identificador de otro de estos conjuntos de reglas</translation>
    </message>
    <message>
        <source>{count} coupons are asked</source>
        <translation>se preguntan {count} cupones</translation>
    </message>
    <message>
        <source>at most {most}</source>
        <translation>como máximo {most}</translation>
    </message>
    <message>
        <source>the time is {value} minutes</source>
        <translation>el tiempo es de {value} minutos</translation>
    </message>
    <message>
        <source>the pass mark is {value}</source>
        <translation>la nota de aprobado es {value}</translation>
    </message>
    <message>
        <source>0 to 1</source>
        <translation>de 0 a 1</translation>
    </message>
    <message>
        <source>no coupon of this sitting can be marked on {named}</source>
        <translation>ningún cupón de esta prueba puede calificarse en {named}</translation>
    </message>
    <message>
        <source>another skill, or coupons that ask for it</source>
        <translation>otra destreza, o cupones que la pidan</translation>
    </message>
    <message>
        <source>{count} learners are named</source>
        <translation>se nombran {count} aprendices</translation>
    </message>
    <message>
        <source>{value} is no code</source>
        <translation>{value} no es un código</translation>
    </message>
    <message>
        <source>1 to {most} characters, no space around them</source>
        <translation>de 1 a {most} caracteres, sin espacios alrededor</translation>
    </message>
    <message>
        <source>{value} is the code of learner {other} too</source>
        <translation>{value} es también el código del aprendiz {other}</translation>
    </message>
    <message>
        <source>a code of their own</source>
        <translation>un código propio</translation>
    </message>
    <message>
        <source>the time more is {value}</source>
        <translation>el tiempo de más es {value}</translation>
    </message>
    <message>
        <source>0 to {most} of the whole</source>
        <translation>de 0 a {most} del total</translation>
    </message>
    <message>
        <source>{value} is no id</source>
        <translation>{value} no es un identificador</translation>
    </message>
    <message>
        <source>a UUID</source>
        <translation>un UUID</translation>
    </message>
    <message>
        <source>the learner is not whose code is {code}</source>
        <translation>el aprendiz no es el del código {code}</translation>
    </message>
    <message>
        <source>the code and the id of one learner</source>
        <translation>el código y el identificador de un mismo aprendiz</translation>
    </message>
    <message>
        <source>the items&apos; numbers don&apos;t run from 1</source>
        <translation>los números de las preguntas no van seguidos desde 1</translation>
    </message>
    <message>
        <source>each number once</source>
        <translation>cada número una vez</translation>
    </message>
    <message>
        <source>two items fill one place of the plan</source>
        <translation>dos preguntas ocupan un mismo lugar del plan</translation>
    </message>
    <message>
        <source>one item for each</source>
        <translation>una pregunta para cada uno</translation>
    </message>
    <message>
        <source>a date and time with its zone, as 2026-03-02T09:00:00.000+00:00</source>
        <translation>fecha y hora con su zona, como 2026-03-02T09:00:00.000+00:00</translation>
    </message>
    <message>
        <source>is no record of a leaf&apos;s path</source>
        <translation>no es un registro del recorrido de una hoja</translation>
    </message>
    <message>
        <source>rows of ms, x, y, angle, turned and event, in order of time</source>
        <translation>filas de ms, x, y, angle, turned y event, por orden de tiempo</translation>
    </message>
    <message>
        <source>a grade of nothing that was stated</source>
        <translation>una calificación de nada que se haya declarado</translation>
    </message>
    <message>
        <source>the attempt too, or neither</source>
        <translation>también el intento, o ninguno de los dos</translation>
    </message>
    <message>
        <source>an answer to another coupon</source>
        <translation>una respuesta a otro cupón</translation>
    </message>
    <message>
        <source>one to {coupon}</source>
        <translation>una a {coupon}</translation>
    </message>
    <message>
        <source>the shop&apos;s rules {rules} are not in the file</source>
        <translation>las reglas del taller {rules} no están en el archivo</translation>
    </message>
    <message>
        <source>a result with the rules that it was judged by</source>
        <translation>un resultado con las reglas por las que se juzgó</translation>
    </message>
    <message>
        <source>the coupon is not the one that was judged</source>
        <translation>el cupón no es el que se juzgó</translation>
    </message>
    <message>
        <source>the coupon of that digest</source>
        <translation>el cupón de ese resumen</translation>
    </message>
    <message>
        <source>{value} is no mark</source>
        <translation>{value} no es una calificación</translation>
    </message>
    <message>
        <source>the mark is {value}</source>
        <translation>la calificación es {value}</translation>
    </message>
    <message>
        <source>no reason is given</source>
        <translation>no se da ningún motivo</translation>
    </message>
    <message>
        <source>the reason is too long</source>
        <translation>el motivo es demasiado largo</translation>
    </message>
    <message>
        <source>nobody is named</source>
        <translation>no se nombra a nadie</translation>
    </message>
    <message>
        <source>who overrides the mark</source>
        <translation>quién cambia la calificación</translation>
    </message>
    <message>
        <source>0 or 1</source>
        <translation>0 o 1</translation>
    </message>
</context>
<context>
    <name>FaultsDialog</name>
    <message>
        <source>This tray can&apos;t be opened</source>
        <translation>Esta bandeja no se puede abrir</translation>
    </message>
    <message>
        <source>{file}

The tray that is open stays as it was.</source>
        <translation>{file}

La bandeja abierta sigue como estaba.</translation>
    </message>
    <message>
        <source>Faults</source>
        <translation>Defectos</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Lugar</translation>
    </message>
    <message>
        <source>whole file</source>
        <translation>todo el archivo</translation>
    </message>
    <message>
        <source>Wrong</source>
        <translation>Incorrecto</translation>
    </message>
    <message>
        <source>Right would be</source>
        <translation>Sería correcto</translation>
    </message>
</context>
<context>
    <name>FileStep</name>
    <message>
        <source>Take a sitting</source>
        <translation>Hacer una prueba</translation>
    </message>
    <message>
        <source>A sitting is a timed set of coupons without help, graded when you hand it in. The proctor has its file (it ends with .sitting) and types its passphrase.</source>
        <translation>Una prueba es una serie de cupones con tiempo y sin ayuda, que se califica al entregarla. Quien vigila tiene su archivo (acaba en .sitting) y escribe su frase.</translation>
    </message>
    <message>
        <source>Choose a sitting...</source>
        <translation>Elegir una prueba...</translation>
    </message>
    <message>
        <source>A sitting that was begun here is not handed in. It was last at work {when}.</source>
        <translation>Una prueba que se empezó aquí no está entregada. Se trabajó en ella por última vez el {when}.</translation>
    </message>
    <message>
        <source>Go on with it...</source>
        <translation>Seguir con ella...</translation>
    </message>
</context>
<context>
    <name>Filing</name>
    <message>
        <source>Autosave does not work ({reason}). Nothing is lost while the program runs: free some space, or save the tray elsewhere.</source>
        <translation>El autoguardado no funciona ({reason}). Nada se pierde mientras el programa siga: libere espacio o guarde la bandeja en otro sitio.</translation>
    </message>
    <message>
        <source>Save the tray before closing?</source>
        <translation>¿Guardar la bandeja antes de cerrar?</translation>
    </message>
    <message>
        <source>The tray in the coupon shop has changes that are not saved.</source>
        <translation>La bandeja del taller de cupones tiene cambios sin guardar.</translation>
    </message>
    <message>
        <source>Save and close</source>
        <translation>Guardar y cerrar</translation>
    </message>
    <message>
        <source>Close without saving</source>
        <translation>Cerrar sin guardar</translation>
    </message>
    <message>
        <source>Stay here</source>
        <translation>Quedarse aquí</translation>
    </message>
    <message>
        <source>{title}
{file}
Last change: {when}; steps that can be undone: {steps}.</source>
        <translation>{title}
{file}
Último cambio: {when}; pasos que se pueden deshacer: {steps}.</translation>
    </message>
    <message>
        <source>A tray without a title</source>
        <translation>Una bandeja sin título</translation>
    </message>
    <message>
        <source>Never saved</source>
        <translation>Nunca guardada</translation>
    </message>
    <message>
        <source>Older ones that wait: {n}.</source>
        <translation>Anteriores que esperan: {n}.</translation>
    </message>
    <message>
        <source>Unsaved coupons from an earlier start</source>
        <translation>Cupones sin guardar de una vez anterior</translation>
    </message>
    <message>
        <source>Take it up again</source>
        <translation>Retomarla</translation>
    </message>
    <message>
        <source>Throw it away</source>
        <translation>Descartarla</translation>
    </message>
    <message>
        <source>Later</source>
        <translation>Más tarde</translation>
    </message>
    <message>
        <source>It can&apos;t be taken up</source>
        <translation>No se puede retomar</translation>
    </message>
    <message>
        <source>{file}: {reason}

The file stays where it is.</source>
        <translation>{file}: {reason}

El archivo queda donde está.</translation>
    </message>
    <message>
        <source>Open tray</source>
        <translation>Abrir bandeja</translation>
    </message>
    <message>
        <source>This tray is being worked on elsewhere</source>
        <translation>Se trabaja en esta bandeja en otro sitio</translation>
    </message>
    <message>
        <source>{file}

Another window of the coupon shop has unsaved changes of it. Whoever saves last is asked before anything is overwritten.</source>
        <translation>{file}

Otra ventana del taller de cupones tiene cambios suyos sin guardar. A quien guarde el último se le pregunta antes de sobrescribir.</translation>
    </message>
    <message>
        <source>Save the open tray first?</source>
        <translation>¿Guardar antes la bandeja abierta?</translation>
    </message>
    <message>
        <source>It has changes that are not saved.</source>
        <translation>Tiene cambios sin guardar.</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
    <message>
        <source>Give the changes up</source>
        <translation>Renunciar a los cambios</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>The file has changed meanwhile</source>
        <translation>El archivo ha cambiado entretanto</translation>
    </message>
    <message>
        <source>{file}

Another program has changed it since it was opened here. Saving over it would lose that change.</source>
        <translation>{file}

Otro programa lo ha cambiado desde que se abrió aquí. Guardar encima perdería ese cambio.</translation>
    </message>
    <message>
        <source>Save under another name</source>
        <translation>Guardar con otro nombre</translation>
    </message>
    <message>
        <source>Save over it</source>
        <translation>Guardar encima</translation>
    </message>
    <message>
        <source>Save tray</source>
        <translation>Guardar bandeja</translation>
    </message>
    <message>
        <source>coupons</source>
        <translation>cupones</translation>
    </message>
    <message>
        <source>Saved: {file}</source>
        <translation>Guardada: {file}</translation>
    </message>
    <message>
        <source>The tray could not be saved</source>
        <translation>No se pudo guardar la bandeja</translation>
    </message>
    <message>
        <source>Nobody may write there, or you may not.</source>
        <translation>Allí no se puede escribir, o usted no puede.</translation>
    </message>
    <message>
        <source>The file is protected against changes.</source>
        <translation>El archivo está protegido contra cambios.</translation>
    </message>
    <message>
        <source>The disk is full. Free some space, or choose another disk.</source>
        <translation>El disco está lleno. Libere espacio o elija otro disco.</translation>
    </message>
    <message>
        <source>Another program holds the file. Close it there first.</source>
        <translation>Otro programa retiene el archivo. Ciérrelo allí primero.</translation>
    </message>
    <message>
        <source>Its folder is not there any more.</source>
        <translation>Su carpeta ya no está.</translation>
    </message>
    <message>
        <source>The system says: {reason}.</source>
        <translation>El sistema dice: {reason}.</translation>
    </message>
    <message>
        <source>{file}

{why}

Whatever was there is as it was, and what you have here is not lost.</source>
        <translation>{file}

{why}

Lo que había sigue como estaba, y lo que tiene aquí no se pierde.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Reintentar</translation>
    </message>
    <message>
        <source>The first coupon can&apos;t be split off: nothing would be left.</source>
        <translation>El primer cupón no se puede separar: no quedaría nada.</translation>
    </message>
    <message>
        <source>Save what is split off</source>
        <translation>Guardar lo que se separa</translation>
    </message>
    <message>
        <source>That is the file of the tray that is open: choose another name.</source>
        <translation>Ese es el archivo de la bandeja abierta: elija otro nombre.</translation>
    </message>
    <message>
        <source>Split off into {file}: {n} of them</source>
        <translation>Separados en {file}: {n}</translation>
    </message>
    <message>
        <source>Merge a tray in</source>
        <translation>Incorporar una bandeja</translation>
    </message>
    <message>
        <source>The trays can&apos;t be merged</source>
        <translation>Las bandejas no se pueden unir</translation>
    </message>
    <message>
        <source>Together they hold too many coupons.</source>
        <translation>Juntas tienen demasiados cupones.</translation>
    </message>
    <message>
        <source>Both have a rule set called {name}, and the two differ.</source>
        <translation>Ambas tienen un conjunto de reglas llamado {name}, y los dos difieren.</translation>
    </message>
    <message>
        <source>Merged in: {n}; with another id, since theirs was taken: {changed}</source>
        <translation>Incorporados: {n}; con otro identificador, por estar ocupado el suyo: {changed}</translation>
    </message>
    <message>
        <source>Rules files go with it</source>
        <translation>Lleva archivos de reglas</translation>
    </message>
    <message>
        <source>Some of these coupons are judged by rules from a file beside their tray, in {folder}. Copy that file beside this tray before you save it.</source>
        <translation>Algunos de estos cupones se juzgan con reglas de un archivo junto a su bandeja, en {folder}. Copie ese archivo junto a esta bandeja antes de guardarla.</translation>
    </message>
    <message>
        <source>Trays (*{suffix});;All files (*)</source>
        <translation>Bandejas (*{suffix});;Todos los archivos (*)</translation>
    </message>
</context>
<context>
    <name>FirstStartCard</name>
    <message>
        <source>Before you begin</source>
        <translation>Antes de empezar</translation>
    </message>
    <message>
        <source>What this program is and is not</source>
        <translation>Qué es y qué no es este programa</translation>
    </message>
    <message>
        <source>To the bench</source>
        <translation>Al banco</translation>
    </message>
    <message>
        <source>What this is</source>
        <translation>Qué es</translation>
    </message>
    <message>
        <source>A training aid for the fillet weld gauge. You take a leaf off the rack, seat it on the cross-section of a weld, say what it shows and make the call. The program knows the true section and tells you afterwards.</source>
        <translation>Una ayuda para aprender a usar la galga de soldaduras de filete. Usted toma una hoja del estante, la asienta en la sección de un cordón, dice qué muestra y dictamina. El programa conoce la sección real y se lo dice después.</translation>
    </message>
    <message>
        <source>What it is not</source>
        <translation>Qué no es</translation>
    </message>
    <message>
        <source>It is not a measuring instrument, and it judges no real weld. It certifies nobody. The governing code, the contract documents and qualified people decide; where they differ from this program, they are right.</source>
        <translation>No es un instrumento de medida ni juzga cordones reales. No certifica a nadie. Deciden el código aplicable, los documentos del contrato y las personas cualificadas; si difieren de este programa, tienen razón ellos.</translation>
    </message>
    <message>
        <source>Your own gauge</source>
        <translation>Su propia galga</translation>
    </message>
    <message>
        <source>Leaves wear and bend, and a worn tip rejects good welds. A gauge needs checks of its own, before use and at the intervals that your shop sets. A section shows one place of a weld: on the real one, find the worst.</source>
        <translation>Las hojas se gastan y se doblan, y una punta gastada rechaza cordones buenos. Una galga necesita sus propias verificaciones, antes de usarla y con la frecuencia que fije su taller. Una sección muestra un solo punto del cordón: en el real, busque el peor.</translation>
    </message>
    <message>
        <source>In the shop</source>
        <translation>En el taller</translation>
    </message>
    <message>
        <source>Arc radiation burns eyes and skin, your own and those of people nearby. Metal stays hot long after it stops glowing. Edges, spatter and wire are sharp. Grinding throws sparks and dust. Fumes and gases need extraction and air. Follow your shop&apos;s rules and wear what they ask for.</source>
        <translation>La radiación del arco quema ojos y piel, los suyos y los de quienes estén cerca. El metal sigue caliente mucho después de dejar de brillar. Los cantos, las salpicaduras y el hilo cortan. El esmerilado lanza chispas y polvo. Los humos y gases exigen extracción y aire. Siga las normas de su taller y use la protección que piden.</translation>
    </message>
</context>
<context>
    <name>FromDice</name>
    <message>
        <source>The tray holds no more coupons.</source>
        <translation>En la bandeja no caben más cupones.</translation>
    </message>
    <message>
        <source>From dice: {n}</source>
        <translation>A los dados: {n}</translation>
    </message>
</context>
<context>
    <name>GroupsPanel</name>
    <message>
        <source>Groups</source>
        <translation>Grupos</translation>
    </message>
    <message>
        <source>New group...</source>
        <translation>Grupo nuevo...</translation>
    </message>
    <message>
        <source>Rename...</source>
        <translation>Renombrar...</translation>
    </message>
    <message>
        <source>Remove...</source>
        <translation>Quitar...</translation>
    </message>
    <message>
        <source>Everybody</source>
        <translation>Todos</translation>
    </message>
    <message>
        <source>{name} ({n})</source>
        <translation>{name} ({n})</translation>
    </message>
</context>
<context>
    <name>Guide</name>
    <message>
        <source>New here?</source>
        <translation>¿Es su primera vez?</translation>
    </message>
    <message>
        <source>Judge the first coupon step by step. It takes five minutes.</source>
        <translation>Juzgue el primer cupón paso a paso. Lleva cinco minutos.</translation>
    </message>
    <message>
        <source>Name the face</source>
        <translation>Nombre la cara</translation>
    </message>
    <message>
        <source>Take a leaf</source>
        <translation>Tome una hoja</translation>
    </message>
    <message>
        <source>Turn it over</source>
        <translation>Voltéela</translation>
    </message>
    <message>
        <source>Press it home</source>
        <translation>Arrímela a fondo</translation>
    </message>
    <message>
        <source>Look closely</source>
        <translation>Mire de cerca</translation>
    </message>
    <message>
        <source>Say what it shows</source>
        <translation>Diga qué muestra</translation>
    </message>
    <message>
        <source>Gauge the other leg</source>
        <translation>Mida el otro cateto</translation>
    </message>
    <message>
        <source>Make the call</source>
        <translation>Dictamine</translation>
    </message>
    <message>
        <source>Put it on record</source>
        <translation>Registrar</translation>
    </message>
    <message>
        <source>Read the debrief</source>
        <translation>Lea el repaso</translation>
    </message>
    <message>
        <source>This is the throat edge. Swap ends (E): legs need the leg edge.</source>
        <translation>Este es el canto de garganta. Use el otro extremo (E): los catetos piden el canto de cateto.</translation>
    </message>
    <message>
        <source>Switch the loupe on (L). It stays on the leaf&apos;s point.</source>
        <translation>Encienda la lupa (L). Sigue la punta de la hoja.</translation>
    </message>
    <message>
        <source>Look at the weld: is its face convex, flat or hollow? Choose that here.</source>
        <translation>Mire el cordón: ¿su cara es convexa, plana o cóncava? Elíjalo aquí.</translation>
    </message>
    <message>
        <source>Take the leaf of the size called for. Click it, drag it, or press its number.</source>
        <translation>Tome la hoja del tamaño indicado: haga clic, arrástrela o pulse su número.</translation>
    </message>
    <message>
        <source>Turn the leaf over (F). Its tip now faces the other member.</source>
        <translation>Voltee la hoja (F). Su punta mira ahora a la otra pieza.</translation>
    </message>
    <message>
        <source>Press Space. Or drag the leaf into the corner until its edge lies flush.</source>
        <translation>Pulse Espacio. O arrastre la hoja al rincón hasta que su canto asiente.</translation>
    </message>
    <message>
        <source>The loupe stays on the tip. Look there for light; zoom with + or Ctrl+wheel.</source>
        <translation>La lupa sigue la punta. Busque ahí la luz; amplíe con + o Ctrl+rueda.</translation>
    </message>
    <message>
        <source>Daylight: a gap at the tip. Held off: the weld keeps the tip away.</source>
        <translation>Luz: un hueco en la punta. Apartada: el cordón no deja llegar la punta.</translation>
    </message>
    <message>
        <source>Set both readings against the callout. Then choose what the weld needs.</source>
        <translation>Compare ambas lecturas con lo indicado. Luego elija qué necesita el cordón.</translation>
    </message>
    <message>
        <source>Say how sure you are if you like. Then put the call on record (Enter).</source>
        <translation>Diga, si quiere, qué seguridad tiene. Luego registre el dictamen (Intro).</translation>
    </message>
    <message>
        <source>This is the true section, and why. Play your handling back (Space).</source>
        <translation>Esta es la sección real, y el porqué. Reproduzca su manejo (Espacio).</translation>
    </message>
    <message>
        <source>One leg proves nothing. Turn the leaf over again (F).</source>
        <translation>Un cateto no prueba nada. Voltee otra vez la hoja (F).</translation>
    </message>
    <message>
        <source>Now press it home on this side too (Space).</source>
        <translation>Arrímela ahora a fondo también por este lado (Espacio).</translation>
    </message>
    <message>
        <source>Look again, and say what it shows here.</source>
        <translation>Mire otra vez y diga qué muestra aquí.</translation>
    </message>
</context>
<context>
    <name>GuideCard</name>
    <message>
        <source>Show me</source>
        <translation>Enséñeme</translation>
    </message>
    <message>
        <source>Not now</source>
        <translation>Ahora no</translation>
    </message>
    <message>
        <source>{n} of {count}</source>
        <translation>{n} de {count}</translation>
    </message>
    <message>
        <source>Skip this step</source>
        <translation>Saltar este paso</translation>
    </message>
    <message>
        <source>I have looked</source>
        <translation>Ya he mirado</translation>
    </message>
    <message>
        <source>Done</source>
        <translation>Hecho</translation>
    </message>
    <message>
        <source>Close the guide</source>
        <translation>Cerrar la guía</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Guide: {title}</source>
        <translation>Guía: {title}</translation>
    </message>
</context>
<context>
    <name>Guiding</name>
    <message>
        <source>&amp;First coupon, step by step</source>
        <translation>&amp;Primer cupón, paso a paso</translation>
    </message>
    <message>
        <source>That was all of it. The guide stays in the Help menu.</source>
        <translation>Eso era todo. La guía queda en el menú Ayuda.</translation>
    </message>
</context>
<context>
    <name>HandInDialog</name>
    <message>
        <source>Hand in?</source>
        <translation>¿Entregar?</translation>
    </message>
    <message>
        <source>{counts}.

These are not answered, or are marked for review. A call that is not complete counts as unanswered. Choose one to go back to it.</source>
        <translation>{counts}.

Estos no tienen respuesta, o están marcados para revisar. Un dictamen incompleto cuenta como sin respuesta. Elija uno para volver a él.</translation>
    </message>
    <message>
        <source>{counts}.

Nothing is left open.</source>
        <translation>{counts}.

No queda nada pendiente.</translation>
    </message>
    <message>
        <source>Hand in now</source>
        <translation>Entregar ya</translation>
    </message>
    <message>
        <source>Go on with the sitting</source>
        <translation>Seguir con la prueba</translation>
    </message>
    <message>
        <source>Not answered, or marked for review</source>
        <translation>Sin respuesta, o marcados para revisar</translation>
    </message>
</context>
<context>
    <name>HandlingView</name>
    <message>
        <source>The weld, and the leaf as it was held</source>
        <translation>El cordón, y la hoja como se sostuvo</translation>
    </message>
    <message>
        <source>The handling</source>
        <translation>El manejo</translation>
    </message>
</context>
<context>
    <name>Hands</name>
    <message>
        <source>Somebody else placed this leaf: look at it, with the loupe too, as it lies.</source>
        <translation>Esta hoja la puso otra persona: mírela, también con la lupa, tal como está.</translation>
    </message>
    <message>
        <source>Steel stops the leaf that way: {where}.</source>
        <translation>El acero para la hoja por ahí: {where}.</translation>
    </message>
    <message>
        <source>Stopped short by steel: {where}.</source>
        <translation>El acero la paró antes: {where}.</translation>
    </message>
    <message>
        <source>Nothing to clean: the toes are clean.</source>
        <translation>Nada que limpiar: los bordes están limpios.</translation>
    </message>
    <message>
        <source>Nothing to undo.</source>
        <translation>Nada que deshacer.</translation>
    </message>
    <message>
        <source>Take a leaf off the rack first.</source>
        <translation>Primero tome una hoja del estante.</translation>
    </message>
    <message>
        <source>No room for that here: move the leaf off the steel first.</source>
        <translation>Aquí no hay sitio: aparte antes la hoja del acero.</translation>
    </message>
    <message>
        <source>The leaf is home as far as steel lets it.</source>
        <translation>La hoja está todo lo a fondo que el acero permite.</translation>
    </message>
    <message>
        <source>Steel stops the leaf that way.</source>
        <translation>El acero para la hoja por ahí.</translation>
    </message>
    <message>
        <source>No leaf here is marked {digit}; the keys [ and ] go along.</source>
        <translation>Aquí ninguna hoja lleva la marca {digit}; las teclas [ y ] recorren el juego.</translation>
    </message>
</context>
<context>
    <name>IntakePanel</name>
    <message>
        <source>Leave</source>
        <translation>Salir</translation>
    </message>
    <message>
        <source>Back to the shop, nothing made (Esc)</source>
        <translation>Volver al taller sin hacer nada (Esc)</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
    <message>
        <source>Undo (Ctrl+Z)</source>
        <translation>Deshacer (Ctrl+Z)</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Rehacer</translation>
    </message>
    <message>
        <source>Redo (Ctrl+Y)</source>
        <translation>Rehacer (Ctrl+Y)</translation>
    </message>
    <message>
        <source>Zoom out</source>
        <translation>Alejar</translation>
    </message>
    <message>
        <source>Zoom out (−)</source>
        <translation>Alejar (−)</translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation>Acercar</translation>
    </message>
    <message>
        <source>Zoom in (+)</source>
        <translation>Acercar (+)</translation>
    </message>
    <message>
        <source>Whole</source>
        <translation>Entero</translation>
    </message>
</context>
<context>
    <name>JobCard</name>
    <message>
        <source>Job card</source>
        <translation>Ficha de trabajo</translation>
    </message>
    <message>
        <source>all of them</source>
        <translation>todas</translation>
    </message>
    <message>
        <source>Read all the rules</source>
        <translation>Leer todas las reglas</translation>
    </message>
    <message>
        <source>Readings taken</source>
        <translation>Lecturas tomadas</translation>
    </message>
    <message>
        <source>None yet: seat a leaf and say what it shows.</source>
        <translation>Ninguna aún: asiente una hoja y diga qué muestra.</translation>
    </message>
    <message>
        <source>Task</source>
        <translation>Tarea</translation>
    </message>
    <message>
        <source>Called for</source>
        <translation>Se pide</translation>
    </message>
    <message>
        <source>Joint</source>
        <translation>Unión</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Reglas</translation>
    </message>
</context>
<context>
    <name>Keys</name>
    <message>
        <source>move the leaf 0.1 mm; with Shift 1 mm</source>
        <translation>mover la hoja 0,1 mm; con Mayús 1 mm</translation>
    </message>
    <message>
        <source>turn it 0.1°; with Shift 1°</source>
        <translation>girarla 0,1°; con Mayús 1°</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>press home</source>
        <translation>arrimar a fondo</translation>
    </message>
    <message>
        <source>turn over</source>
        <translation>voltear</translation>
    </message>
    <message>
        <source>swap ends</source>
        <translation>cambiar de extremo</translation>
    </message>
    <message>
        <source>clean the toes</source>
        <translation>limpiar los bordes</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>put the leaf back</source>
        <translation>devolver la hoja</translation>
    </message>
    <message>
        <source>undo</source>
        <translation>deshacer</translation>
    </message>
    <message>
        <source>Ctrl+Z</source>
        <translation>Ctrl+Z</translation>
    </message>
    <message>
        <source>take the leaf with that mark; of the inch set, by place</source>
        <translation>tomar la hoja con esa marca; en pulgadas, por su lugar</translation>
    </message>
    <message>
        <source>take the next smaller or larger leaf</source>
        <translation>tomar la hoja menor o mayor siguiente</translation>
    </message>
    <message>
        <source>state daylight, touch, held off, not seated</source>
        <translation>decir luz, contacto, apartada, sin asentar</translation>
    </message>
    <message>
        <source>state the leaf in hand as the largest that the weld meets</source>
        <translation>declarar la hoja en mano como la mayor que el cordón cumple</translation>
    </message>
    <message>
        <source>of a placed leaf: say what is wrong with it</source>
        <translation>de una hoja puesta: decir qué falla</translation>
    </message>
    <message>
        <source>play your handling, or pause</source>
        <translation>reproducir su manejo, o pausa</translation>
    </message>
    <message>
        <source>one step of it; with Shift one picture</source>
        <translation>un paso; con Mayús una imagen</translation>
    </message>
    <message>
        <source>its beginning or end</source>
        <translation>su principio o su fin</translation>
    </message>
    <message>
        <source>play slower or faster</source>
        <translation>más lento o más rápido</translation>
    </message>
    <message>
        <source>skip the pauses or not</source>
        <translation>saltar pausas o no</translation>
    </message>
    <message>
        <source>truth and reasons on or off</source>
        <translation>verdad y razones sí o no</translation>
    </message>
    <message>
        <source>the next moment at which something went wrong</source>
        <translation>el momento siguiente en que algo salió mal</translation>
    </message>
    <message>
        <source>the right handling over the picture, a seat at a time</source>
        <translation>el manejo correcto sobre la imagen, un asiento cada vez</translation>
    </message>
    <message>
        <source>the photo behind the section, if there is one</source>
        <translation>la foto detrás de la sección, si la hay</translation>
    </message>
    <message>
        <source>lay the same coupon out again</source>
        <translation>volver a poner el mismo cupón</translation>
    </message>
    <message>
        <source>Click</source>
        <translation>Clic</translation>
    </message>
    <message>
        <source>Drag</source>
        <translation>Arrastre</translation>
    </message>
    <message>
        <source>carry the leaf; beside it, shift the picture</source>
        <translation>llevar la hoja; fuera de ella, mover la imagen</translation>
    </message>
    <message>
        <source>Right click</source>
        <translation>Clic derecho</translation>
    </message>
    <message>
        <source>bring that place to the middle</source>
        <translation>llevar ese lugar al centro</translation>
    </message>
    <message>
        <source>Two fingers</source>
        <translation>Dos dedos</translation>
    </message>
    <message>
        <source>on the leaf: carry and turn it; beside it: zoom and shift</source>
        <translation>en la hoja: llevarla y girarla; fuera: ampliar y mover</translation>
    </message>
    <message>
        <source>Handling the leaf</source>
        <translation>Manejo de la hoja</translation>
    </message>
    <message>
        <source>The call</source>
        <translation>El dictamen</translation>
    </message>
    <message>
        <source>The picture</source>
        <translation>La imagen</translation>
    </message>
    <message>
        <source>After a call</source>
        <translation>Tras el dictamen</translation>
    </message>
    <message>
        <source>Mouse and touch</source>
        <translation>Ratón y pantalla táctil</translation>
    </message>
    <message>
        <source>name the face convex, flat, hollow</source>
        <translation>nombrar la cara: convexa, plana, cóncava</translation>
    </message>
    <message>
        <source>call: accept, add weld metal, dress back, refer</source>
        <translation>dictamen: aceptar, aportar metal, rebajar, remitir</translation>
    </message>
    <message>
        <source>surer by a tenth; with Shift less sure</source>
        <translation>un décimo más de seguridad; con Mayús, menos</translation>
    </message>
    <message>
        <source>turn up a bench note</source>
        <translation>destapar una nota de banco</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Intro</translation>
    </message>
    <message>
        <source>put the call on record</source>
        <translation>registrar el dictamen</translation>
    </message>
    <message>
        <source>PgUp  PgDn</source>
        <translation>RePág  AvPág</translation>
    </message>
    <message>
        <source>the coupon before or after in the tray</source>
        <translation>el cupón anterior o siguiente de la bandeja</translation>
    </message>
    <message>
        <source>zoom in, zoom out, fit</source>
        <translation>ampliar, reducir, encajar</translation>
    </message>
    <message>
        <source>Ctrl+← ↑ → ↓</source>
        <translation>Ctrl+← ↑ → ↓</translation>
    </message>
    <message>
        <source>look further to that side</source>
        <translation>mirar más hacia ese lado</translation>
    </message>
    <message>
        <source>loupe on or off</source>
        <translation>lupa sí o no</translation>
    </message>
    <message>
        <source>Home  End</source>
        <translation>Inicio  Fin</translation>
    </message>
    <message>
        <source>a leaf: take it off the rack; a place: put it there</source>
        <translation>una hoja: tomarla del estante; un lugar: ponerla ahí</translation>
    </message>
    <message>
        <source>Wheel</source>
        <translation>Rueda</translation>
    </message>
    <message>
        <source>turn 5°; with Shift 0.5°</source>
        <translation>girar 5°; con Mayús 0,5°</translation>
    </message>
    <message>
        <source>Ctrl+Wheel</source>
        <translation>Ctrl+rueda</translation>
    </message>
    <message>
        <source>zoom to the pointer</source>
        <translation>ampliar en el puntero</translation>
    </message>
</context>
<context>
    <name>KeysDialog</name>
    <message>
        <source>Keys</source>
        <translation>Teclas</translation>
    </message>
    <message>
        <source>Keys and what they do</source>
        <translation>Las teclas y lo que hacen</translation>
    </message>
</context>
<context>
    <name>KnobBar</name>
    <message>
        <source>Handle</source>
        <translation>Asa</translation>
    </message>
    <message>
        <source>Handle to work with</source>
        <translation>Asa con la que se trabaja</translation>
    </message>
    <message>
        <source>Less (with Shift ten times, Ctrl a tenth)</source>
        <translation>Menos (con Mayús diez veces, con Ctrl un décimo)</translation>
    </message>
    <message>
        <source>More (with Shift ten times, Ctrl a tenth)</source>
        <translation>Más (con Mayús diez veces, con Ctrl un décimo)</translation>
    </message>
    <message>
        <source>Point to the left</source>
        <translation>Punto a la izquierda</translation>
    </message>
    <message>
        <source>Point to the right</source>
        <translation>Punto a la derecha</translation>
    </message>
    <message>
        <source>Point up</source>
        <translation>Punto arriba</translation>
    </message>
    <message>
        <source>Point down</source>
        <translation>Punto abajo</translation>
    </message>
    <message>
        <source>Insert</source>
        <translation>Insertar</translation>
    </message>
    <message>
        <source>Draw</source>
        <translation>Dibujar</translation>
    </message>
    <message>
        <source>Draw legs, triangle or throats over the section, or show its photo (1, 2, 3, 4)</source>
        <translation>Dibujar catetos, triángulo o gargantas sobre la sección, o mostrar su foto (1, 2, 3, 4)</translation>
    </message>
    <message>
        <source>The photo behind it</source>
        <translation>La foto detrás</translation>
    </message>
    <message>
        <source>Insert a point after it</source>
        <translation>Insertar un punto después</translation>
    </message>
    <message>
        <source>Delete the point</source>
        <translation>Borrar el punto</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Borrar</translation>
    </message>
    <message>
        <source>Closer</source>
        <translation>Más cerca</translation>
    </message>
    <message>
        <source>Farther</source>
        <translation>Más lejos</translation>
    </message>
    <message>
        <source>All of it</source>
        <translation>Todo</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Todo</translation>
    </message>
</context>
<context>
    <name>KnobRow</name>
    <message>
        <source>{knob}: less</source>
        <translation>{knob}: menos</translation>
    </message>
    <message>
        <source>{knob}: more</source>
        <translation>{knob}: más</translation>
    </message>
</context>
<context>
    <name>KnownField</name>
    <message>
        <source>This has to be more than 0, and at most 1000 mm</source>
        <translation>Tiene que ser más de 0 y como mucho 1000 mm</translation>
    </message>
    <message>
        <source>This has to be more than 0</source>
        <translation>Tiene que ser más de 0</translation>
    </message>
</context>
<context>
    <name>LeafButton</name>
    <message>
        <source>Leaf {mark}</source>
        <translation>Hoja {mark}</translation>
    </message>
</context>
<context>
    <name>LeafRow</name>
    <message>
        <source>Leaf</source>
        <translation>Hoja</translation>
    </message>
    <message>
        <source>Rack</source>
        <translation>Juego</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>inch</source>
        <translation>in</translation>
    </message>
    <message>
        <source>throat</source>
        <translation>garganta</translation>
    </message>
    <message>
        <source>Leaf: smaller</source>
        <translation>Hoja: menor</translation>
    </message>
    <message>
        <source>Leaf: larger</source>
        <translation>Hoja: mayor</translation>
    </message>
</context>
<context>
    <name>LeavesTable</name>
    <message>
        <source>Rack</source>
        <translation>Estante</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>inch</source>
        <translation>pulgada</translation>
    </message>
    <message>
        <source>throat</source>
        <translation>garganta</translation>
    </message>
    <message>
        <source>Take the leaf off</source>
        <translation>Quitar la hoja</translation>
    </message>
    <message>
        <source>Place it</source>
        <translation>Ponerla</translation>
    </message>
    <message>
        <source>Leave it there: learners are to find what is wrong with how it lies</source>
        <translation>Dejarla ahí: los aprendices han de hallar qué falla en su postura</translation>
    </message>
    <message>
        <source>Gaps in {unit}; choose one to see it</source>
        <translation>Luces en {unit}; elija una para verla</translation>
    </message>
    <message>
        <source>Leaf</source>
        <translation>Hoja</translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation>Base</translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation>Montante</translation>
    </message>
    <message>
        <source>Throat</source>
        <translation>Garganta</translation>
    </message>
    <message>
        <source>What each leaf would show</source>
        <translation>Qué mostraría cada hoja</translation>
    </message>
</context>
<context>
    <name>Logbook</name>
    <message>
        <source>Logbook of {name}</source>
        <translation>Cuaderno de {name}</translation>
    </message>
    <message>
        <source>From a training aid, not an instrument: it says how coupons on a screen were judged, not who may sign for a weld. Codes, contract documents and qualified people decide that.</source>
        <translation>De una ayuda para aprender, no un instrumento: dice cómo se juzgaron cupones en una pantalla, no quién puede firmar un cordón. Eso lo deciden los códigos, los documentos del contrato y las personas cualificadas.</translation>
    </message>
    <message>
        <source>Share</source>
        <translation>Proporción</translation>
    </message>
    <message>
        <source>Calls</source>
        <translation>Dictámenes</translation>
    </message>
    <message>
        <source>Distance from the limit, mm (left: short of it)</source>
        <translation>Distancia al límite, mm (a la izquierda: escaso)</translation>
    </message>
    <message>
        <source>Called short</source>
        <translation>Dado por escaso</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Clase</translation>
    </message>
    <message>
        <source>Times</source>
        <translation>Veces</translation>
    </message>
    <message>
        <source>How sure you were</source>
        <translation>Seguridad declarada</translation>
    </message>
    <message>
        <source>Week from</source>
        <translation>Semana desde</translation>
    </message>
    <message>
        <source>Marks</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Where you draw the line</source>
        <translation>Dónde traza usted la línea</translation>
    </message>
    <message>
        <source>Misses and false alarms</source>
        <translation>Fallos y falsas alarmas</translation>
    </message>
    <message>
        <source>What went wrong, by kind</source>
        <translation>Qué salió mal, por clases</translation>
    </message>
    <message>
        <source>How sure, and how right</source>
        <translation>Cuánta seguridad y cuánto acierto</translation>
    </message>
    <message>
        <source>Week by week</source>
        <translation>Semana a semana</translation>
    </message>
    <message>
        <source>limit</source>
        <translation>límite</translation>
    </message>
    <message>
        <source>grey: within a leaf&apos;s doubt</source>
        <translation>gris: dentro de la duda de una hoja</translation>
    </message>
    <message>
        <source>Bad, let go</source>
        <translation>Malo, admitido</translation>
    </message>
    <message>
        <source>Good, rejected</source>
        <translation>Bueno, rechazado</translation>
    </message>
    <message>
        <source>How often right</source>
        <translation>Con qué frecuencia acierta</translation>
    </message>
    <message>
        <source>face named wrong</source>
        <translation>cara mal nombrada</translation>
    </message>
    <message>
        <source>no leaf held to the weld</source>
        <translation>sin hoja en el cordón</translation>
    </message>
    <message>
        <source>another leaf was needed</source>
        <translation>hacía falta otra hoja</translation>
    </message>
    <message>
        <source>hollow, not read at the throat</source>
        <translation>cóncava, no leída en la garganta</translation>
    </message>
    <message>
        <source>convex, read at the throat</source>
        <translation>convexa, leída en la garganta</translation>
    </message>
    <message>
        <source>one leg only</source>
        <translation>un solo cateto</translation>
    </message>
    <message>
        <source>leaf inside steel</source>
        <translation>hoja dentro del acero</translation>
    </message>
    <message>
        <source>leaf not seated</source>
        <translation>hoja sin asentar</translation>
    </message>
    <message>
        <source>leaf read otherwise</source>
        <translation>hoja leída de otro modo</translation>
    </message>
    <message>
        <source>a fault of a placed leaf not seen</source>
        <translation>un fallo de una hoja puesta, no visto</translation>
    </message>
    <message>
        <source>another leaf was the largest met</source>
        <translation>otra hoja era la mayor cumplida</translation>
    </message>
    <message>
        <source>a size stated where no leaf is met</source>
        <translation>una medida declarada donde no se cumple ninguna hoja</translation>
    </message>
    <message>
        <source>bench notes turned up</source>
        <translation>notas del banco vueltas</translation>
    </message>
    <message>
        <source>a good weld not accepted</source>
        <translation>cordón bueno no aceptado</translation>
    </message>
    <message>
        <source>weld metal was missing</source>
        <translation>faltaba metal</translation>
    </message>
    <message>
        <source>should have been dressed back</source>
        <translation>había que rebajarlo</translation>
    </message>
    <message>
        <source>should have been referred</source>
        <translation>había que remitirlo</translation>
    </message>
    <message>
        <source>acceptable</source>
        <translation>aceptable</translation>
    </message>
    <message>
        <source>marginal</source>
        <translation>marginal</translation>
    </message>
    <message>
        <source>unacceptable</source>
        <translation>inaceptable</translation>
    </message>
    <message>
        <source>too few to say</source>
        <translation>muy pocos para decirlo</translation>
    </message>
    <message>
        <source>{have} of the {need} calls that anything could be said from.</source>
        <translation>{have} de los {need} dictámenes con los que se podría decir algo.</translation>
    </message>
    <message>
        <source>Nothing can be said yet: only calls that hang on a size count here.</source>
        <translation>Aún no se puede decir nada: aquí solo cuentan los dictámenes que dependen de una medida.</translation>
    </message>
    <message>
        <source>In a day&apos;s first calls, before anything told you how they went, the line lies {where}: that is the honest measure.</source>
        <translation>En los primeros dictámenes de un día, antes de saber cómo fueron, la línea está {where}: esa es la medida honrada.</translation>
    </message>
    <message>
        <source>{middle} the limit (95 %: from {low} to {high})</source>
        <translation>{middle} del límite (95 %: de {low} a {high})</translation>
    </message>
    <message>
        <source>from {low} to {high}</source>
        <translation>de {low} a {high}</translation>
    </message>
    <message>
        <source>You call a weld short just where the limit is (95 %: {span}).</source>
        <translation>Usted da un cordón por escaso justo donde está el límite (95 %: {span}).</translation>
    </message>
    <message>
        <source>You call welds short up to {off} above the limit (95 %: {span}).</source>
        <translation>Usted da cordones por escasos hasta {off} por encima del límite (95 %: {span}).</translation>
    </message>
    <message>
        <source>You let welds pass down to {off} below the limit (95 %: {span}).</source>
        <translation>Usted deja pasar cordones hasta {off} por debajo del límite (95 %: {span}).</translation>
    </message>
    <message>
        <source>Commonest: {fault} ({count}).</source>
        <translation>Lo más común: {fault} ({count}).</translation>
    </message>
    <message>
        <source>{length} below</source>
        <translation>{length} por debajo</translation>
    </message>
    <message>
        <source>{length} above</source>
        <translation>{length} por encima</translation>
    </message>
    <message>
        <source>Your line is blurred by {spread}: two welds that differ by less are told apart by luck.</source>
        <translation>Su línea está borrosa en {spread}: dos cordones que difieren en menos se distinguen por azar.</translation>
    </message>
    <message>
        <source>Nine short welds in ten are caught, however little.</source>
        <translation>Se descubren nueve de cada diez cordones escasos, por poco que falte.</translation>
    </message>
    <message>
        <source>Of welds {fitted} short nine in ten are caught.</source>
        <translation>De los cordones a los que faltan {fitted} se descubren nueve de cada diez.</translation>
    </message>
    <message>
        <source>Of welds {fitted} short nine in ten are caught; with 95 % confidence, of welds {surely} short.</source>
        <translation>De los cordones a los que faltan {fitted} se descubren nueve de cada diez; con un 95 % de confianza, de aquellos a los que faltan {surely}.</translation>
    </message>
    <message>
        <source>No call crossed the line yet, so how steep the curve is can&apos;t be told: only calls nearer the limit would.</source>
        <translation>Ningún dictamen cruzó aún la línea, así que no se sabe cuán empinada es la curva: solo lo dirían dictámenes más cerca del límite.</translation>
    </message>
    <message>
        <source>No call outside the doubt yet.</source>
        <translation>Aún no hay dictámenes fuera de la duda.</translation>
    </message>
    <message>
        <source>Of {of} bad welds {count} were let go, {share}: {standing}.</source>
        <translation>De {of} cordones malos se admitieron {count}, {share}: {standing}.</translation>
    </message>
    <message>
        <source>Of {of} good welds {count} were rejected, {share}: {standing}.</source>
        <translation>De {of} cordones buenos se rechazaron {count}, {share}: {standing}.</translation>
    </message>
    <message>
        <source>Limits for appraisers: 2 and 5 % of the bad, 5 and 10 % of the good (AIAG MSA, third edition).</source>
        <translation>Límites para evaluadores: 2 y 5 % de los malos, 5 y 10 % de los buenos (AIAG MSA, tercera edición).</translation>
    </message>
    <message>
        <source>Agreement with the truth beyond chance (kappa): {kappa}.</source>
        <translation>Acuerdo con la verdad más allá del azar (kappa): {kappa}.</translation>
    </message>
    <message>
        <source>Called again, {count} of {of} coupons were called alike.</source>
        <translation>Juzgados otra vez, {count} de {of} cupones recibieron el mismo dictamen.</translation>
    </message>
    <message>
        <source>Called again, {count} of {of} coupons were called alike (Fleiss&apos; kappa {kappa}).</source>
        <translation>Juzgados otra vez, {count} de {of} cupones recibieron el mismo dictamen (kappa de Fleiss {kappa}).</translation>
    </message>
    <message>
        <source>{hits} of {trials} bad welds caught shows, with 95 % confidence, that nine in ten are.</source>
        <translation>{hits} de {trials} cordones malos descubiertos muestra, con un 95 % de confianza, que se descubren nueve de cada diez.</translation>
    </message>
    <message>
        <source>{hits} of {trials} bad welds caught doesn&apos;t show yet that nine in ten are: {more} more without a miss would.</source>
        <translation>{hits} de {trials} cordones malos descubiertos no muestra aún que sean nueve de cada diez: lo mostrarían {more} más sin un fallo.</translation>
    </message>
    <message>
        <source>Nothing was marked down yet.</source>
        <translation>Aún no se descontó nada.</translation>
    </message>
    <message>
        <source>Too few calls said how sure they were.</source>
        <translation>Muy pocos dictámenes dijeron con cuánta seguridad.</translation>
    </message>
    <message>
        <source>You are surer than you are right: {sure} % sure, {right} % right.</source>
        <translation>Tiene más seguridad que acierto: {sure} % de seguridad, {right} % de acierto.</translation>
    </message>
    <message>
        <source>You are right more often than you think: {sure} % sure, {right} % right.</source>
        <translation>Acierta más de lo que cree: {sure} % de seguridad, {right} % de acierto.</translation>
    </message>
    <message>
        <source>You know what you know: {sure} % sure, {right} % right.</source>
        <translation>Sabe lo que sabe: {sure} % de seguridad, {right} % de acierto.</translation>
    </message>
    <message>
        <source>One week is no course yet: a second one is needed.</source>
        <translation>Una semana no es aún un curso: hace falta otra.</translation>
    </message>
    <message>
        <source>Marks went from {first} % to {last} % over {weeks} weeks.</source>
        <translation>La nota pasó de {first} % a {last} % en {weeks} semanas.</translation>
    </message>
    <message>
        <source>Practice goes on: calls are kept aside and taken in when it opens again.</source>
        <translation>La práctica sigue: los dictámenes se guardan aparte y se incorporan cuando vuelva a abrirse.</translation>
    </message>
    <message>
        <source>The logbook is from a newer version of this program.</source>
        <translation>El cuaderno es de una versión más nueva de este programa.</translation>
    </message>
    <message>
        <source>Use that version, or put a backup back.</source>
        <translation>Use esa versión o reponga una copia.</translation>
    </message>
    <message>
        <source>The logbook can&apos;t be read: its file is damaged.</source>
        <translation>El cuaderno no se puede leer: su archivo está dañado.</translation>
    </message>
    <message>
        <source>Put a backup back; the damaged file is kept beside it.</source>
        <translation>Reponga una copia; el archivo dañado se conserva al lado.</translation>
    </message>
    <message>
        <source>Another program holds the logbook.</source>
        <translation>Otro programa tiene ocupado el cuaderno.</translation>
    </message>
    <message>
        <source>Close that program, then try again.</source>
        <translation>Cierre ese programa e inténtelo de nuevo.</translation>
    </message>
    <message>
        <source>The disk is full: the logbook can&apos;t be written.</source>
        <translation>El disco está lleno: no se puede escribir en el cuaderno.</translation>
    </message>
    <message>
        <source>Make room, then try again.</source>
        <translation>Haga sitio e inténtelo de nuevo.</translation>
    </message>
    <message>
        <source>The logbook can&apos;t be opened or written.</source>
        <translation>El cuaderno no se puede abrir o escribir.</translation>
    </message>
    <message>
        <source>See that its folder exists and may be written to.</source>
        <translation>Compruebe que su carpeta existe y admite escritura.</translation>
    </message>
    <message>
        <source>That learner isn&apos;t in this logbook any more.</source>
        <translation>Ese aprendiz ya no está en este cuaderno.</translation>
    </message>
    <message>
        <source>Choose another one.</source>
        <translation>Elija otro.</translation>
    </message>
    <message>
        <source>That name is taken, empty or too long.</source>
        <translation>Ese nombre ya existe, está vacío o es demasiado largo.</translation>
    </message>
    <message>
        <source>Learner 1</source>
        <translation>Aprendiz 1</translation>
    </message>
</context>
<context>
    <name>LogbookScreen</name>
    <message>
        <source>Try again</source>
        <translation>Intentar de nuevo</translation>
    </message>
    <message>
        <source>The clock of this machine was set back: calls keep the order that they were made in, but their days may be wrong. Set the clock right.</source>
        <translation>El reloj de este equipo se atrasó: los dictámenes conservan el orden en que se hicieron, pero sus días pueden ser falsos. Ponga el reloj en hora.</translation>
    </message>
    <message numerus="yes">
        <source>%n call(s) kept aside.</source>
        <translation>
            <numerusform>%n dictamen guardado aparte.</numerusform>
            <numerusform>%n dictámenes guardados aparte.</numerusform>
        </translation>
    </message>
    <message>
        <source>{name} has made no call yet. Each call that is put on record at the bench comes here; what it says of them grows from the first on.</source>
        <translation>{name} aún no ha dado ningún dictamen. Cada dictamen que se registra en el banco llega aquí; lo que dice crece desde el primero.</translation>
    </message>
</context>
<context>
    <name>LookUp</name>
    <message>
        <source>Look up: {what}</source>
        <translation>Consultar: {what}</translation>
    </message>
    <message>
        <source>Look it up in the reference</source>
        <translation>Consultarlo en la referencia</translation>
    </message>
</context>
<context>
    <name>MarksPanel</name>
    <message>
        <source>{name}: &lt;s&gt;{was}&lt;/s&gt; &lt;b&gt;{now}&lt;/b&gt;, set by hand</source>
        <translation>{name}: &lt;s&gt;{was}&lt;/s&gt; &lt;b&gt;{now}&lt;/b&gt;, puesto a mano</translation>
    </message>
    <message>
        <source>{name}: {now}, set by hand; graded {was}</source>
        <translation>{name}: {now}, puesto a mano; calificado con {was}</translation>
    </message>
    <message>
        <source>{name}: &lt;s&gt;{was}&lt;/s&gt; &lt;b&gt;{now}&lt;/b&gt;, by what was set by hand</source>
        <translation>{name}: &lt;s&gt;{was}&lt;/s&gt; &lt;b&gt;{now}&lt;/b&gt;, por lo puesto a mano</translation>
    </message>
    <message>
        <source>{name}: {now}, by what was set by hand; graded {was}</source>
        <translation>{name}: {now}, por lo puesto a mano; calificado con {was}</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>sí</translation>
    </message>
    <message>
        <source>no</source>
        <translation>no</translation>
    </message>
    <message>
        <source>not marked</source>
        <translation>sin calificar</translation>
    </message>
    <message>
        <source>{at}, {by}: set to {value}. “{reason}”</source>
        <translation>{at}, {by}: puesto en {value}. «{reason}»</translation>
    </message>
    <message>
        <source>Override...</source>
        <translation>Cambiar...</translation>
    </message>
    <message>
        <source>Override {mark}</source>
        <translation>Cambiar {mark}</translation>
    </message>
    <message>
        <source>Put back...</source>
        <translation>Reponer...</translation>
    </message>
    <message>
        <source>Put {mark} back as graded</source>
        <translation>Reponer {mark} como se calificó</translation>
    </message>
</context>
<context>
    <name>MeasuresTable</name>
    <message>
        <source>Measure</source>
        <translation>Medida</translation>
    </message>
    <message>
        <source>Is</source>
        <translation>Mide</translation>
    </message>
    <message>
        <source>True measures</source>
        <translation>Medidas reales</translation>
    </message>
</context>
<context>
    <name>MissingTray</name>
    <message>
        <source>This tray is not there</source>
        <translation>Esta bandeja no está</translation>
    </message>
    <message>
        <source>{file}

It may have been moved or renamed, or its disk is not connected.</source>
        <translation>{file}

Puede que la hayan movido o renombrado, o que su disco no esté conectado.</translation>
    </message>
    <message>
        <source>Take it off the list</source>
        <translation>Quitarla de la lista</translation>
    </message>
</context>
<context>
    <name>NextBar</name>
    <message>
        <source>Lay it out again   R</source>
        <translation>Otra vez   R</translation>
    </message>
    <message>
        <source>The same coupon again</source>
        <translation>El mismo cupón otra vez</translation>
    </message>
    <message>
        <source>Back to the first</source>
        <translation>Al primero</translation>
    </message>
    <message>
        <source>Next from the tray</source>
        <translation>Siguiente de la bandeja</translation>
    </message>
    <message>
        <source>Next coupon</source>
        <translation>Cupón siguiente</translation>
    </message>
    <message>
        <source>PgDn</source>
        <translation>AvPág</translation>
    </message>
</context>
<context>
    <name>NoteSlip</name>
    <message>
        <source>Bench note {n} of {count}: read it again</source>
        <translation>Nota de banco {n} de {count}: releerla</translation>
    </message>
    <message>
        <source>Bench note {n} of {count}: turn it up</source>
        <translation>Nota de banco {n} de {count}: destaparla</translation>
    </message>
</context>
<context>
    <name>Notes</name>
    <message>
        <source>Bench notes: 5 off the score each</source>
        <translation>Notas del banco: restan 5 cada una</translation>
    </message>
</context>
<context>
    <name>OverrideDialog</name>
    <message>
        <source>Put back as graded: {mark}</source>
        <translation>Reponer como se calificó: {mark}</translation>
    </message>
    <message>
        <source>Override: {mark}</source>
        <translation>Cambiar: {mark}</translation>
    </message>
    <message>
        <source>Graded {graded}, now {value}. The grade stays beside the override, and nothing that was overridden before is erased.</source>
        <translation>Calificado con {graded}, ahora {value}. La calificación queda junto al cambio, y no se borra nada de lo cambiado antes.</translation>
    </message>
    <message>
        <source>Mark</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Reason</source>
        <translation>Motivo</translation>
    </message>
    <message>
        <source>Reason (needed)</source>
        <translation>Motivo (necesario)</translation>
    </message>
    <message>
        <source>Who says so</source>
        <translation>Quién lo dice</translation>
    </message>
    <message>
        <source>Who says so (needed)</source>
        <translation>Quién lo dice (necesario)</translation>
    </message>
    <message>
        <source>Put back</source>
        <translation>Reponer</translation>
    </message>
    <message>
        <source>Override</source>
        <translation>Cambiar</translation>
    </message>
    <message>
        <source> %</source>
        <translation> %</translation>
    </message>
    <message>
        <source>Not critical</source>
        <translation>No crítico</translation>
    </message>
    <message>
        <source>Critical</source>
        <translation>Crítico</translation>
    </message>
    <message>
        <source>A reason of 1 to {most} characters is needed.</source>
        <translation>Hace falta un motivo de 1 a {most} caracteres.</translation>
    </message>
    <message>
        <source>Who says so is needed.</source>
        <translation>Hace falta quién lo dice.</translation>
    </message>
    <message>
        <source>Being kept...</source>
        <translation>Guardando...</translation>
    </message>
    <message>
        <source>critical</source>
        <translation>crítico</translation>
    </message>
    <message>
        <source>not critical</source>
        <translation>no crítico</translation>
    </message>
    <message>
        <source>not marked</source>
        <translation>sin calificar</translation>
    </message>
</context>
<context>
    <name>Panel</name>
    <message>
        <source>Equal legs</source>
        <translation>Catetos iguales</translation>
    </message>
    <message>
        <source>Equal legs (E)</source>
        <translation>Catetos iguales (E)</translation>
    </message>
    <message>
        <source>Turn over</source>
        <translation>Voltear</translation>
    </message>
    <message>
        <source>Draw</source>
        <translation>Dibujar</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
    <message>
        <source>Reset</source>
        <translation>Reiniciar</translation>
    </message>
    <message>
        <source>Home</source>
        <translation>Inicio</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Copiar</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
    <message>
        <source>Full screen</source>
        <translation>Pantalla completa</translation>
    </message>
    <message>
        <source>Give the talk</source>
        <translation>Dar la charla</translation>
    </message>
    <message>
        <source>PNG for a slide, 1920 × 1080...</source>
        <translation>PNG para diapositiva, 1920 × 1080...</translation>
    </message>
    <message>
        <source>PNG for print, A4 wide at 300 dpi...</source>
        <translation>PNG para imprimir, ancho A4 a 300 ppp...</translation>
    </message>
    <message>
        <source>SVG drawing...</source>
        <translation>Dibujo SVG...</translation>
    </message>
    <message>
        <source>PDF page...</source>
        <translation>Página PDF...</translation>
    </message>
    <message>
        <source>End the talk</source>
        <translation>Terminar la charla</translation>
    </message>
</context>
<context>
    <name>PaperPage</name>
    <message>
        <source>Back to the class  Esc</source>
        <translation>Volver a la clase  Esc</translation>
    </message>
    <message>
        <source>Back to the class</source>
        <translation>Volver a la clase</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportar</translation>
    </message>
    <message>
        <source>This paper as a table (CSV)...</source>
        <translation>Este examen como tabla (CSV)...</translation>
    </message>
    <message>
        <source>Everything of this learner (CSV)...</source>
        <translation>Todo lo de este aprendiz (CSV)...</translation>
    </message>
    <message>
        <source>Statements (xAPI)...</source>
        <translation>Declaraciones (xAPI)...</translation>
    </message>
    <message>
        <source>Sheet to print (PDF)...</source>
        <translation>Hoja para imprimir (PDF)...</translation>
    </message>
    <message>
        <source>Sheet for screen readers (HTML)...</source>
        <translation>Hoja para lectores de pantalla (HTML)...</translation>
    </message>
    <message>
        <source>Coupons of this paper</source>
        <translation>Cupones de este examen</translation>
    </message>
    <message>
        <source>{number}  {title}</source>
        <translation>{number}  {title}</translation>
    </message>
    <message>
        <source>Not answered. Right call: {right}. Looked at for {seconds} s.</source>
        <translation>Sin responder. Dictamen correcto: {right}. Visto durante {seconds} s.</translation>
    </message>
    <message numerus="yes">
        <source>Call: {called}. Right call: {right}. {seconds} s in %n visit(s).</source>
        <translation>
            <numerusform>Dictamen: {called}. Dictamen correcto: {right}. {seconds} s en %n visita.</numerusform>
            <numerusform>Dictamen: {called}. Dictamen correcto: {right}. {seconds} s en %n visitas.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>PaperView</name>
    <message>
        <source>Paper of</source>
        <translation>Examen de</translation>
    </message>
    <message>
        <source>Whose paper is shown</source>
        <translation>De quién es el examen</translation>
    </message>
    <message>
        <source>Draw other papers</source>
        <translation>Sortear otros</translation>
    </message>
    <message>
        <source>Another order, and other welds from the dice, for every learner</source>
        <translation>Otro orden, y otras soldaduras de los dados, para cada aprendiz</translation>
    </message>
    <message>
        <source>With the right calls: for your eyes, not for those who will sit it.</source>
        <translation>Con los dictámenes correctos: para sus ojos, no para quienes la harán.</translation>
    </message>
    <message>
        <source>No.</source>
        <translation>N.º</translation>
    </message>
    <message>
        <source>Coupon</source>
        <translation>Cupón</translation>
    </message>
    <message>
        <source>Calls for</source>
        <translation>Pide</translation>
    </message>
    <message>
        <source>Face</source>
        <translation>Cara</translation>
    </message>
    <message>
        <source>Right call</source>
        <translation>Dictamen correcto</translation>
    </message>
    <message>
        <source>The paper</source>
        <translation>El examen</translation>
    </message>
    <message>
        <source>Somebody without a code</source>
        <translation>Alguien sin código</translation>
    </message>
    <message>
        <source>Anybody</source>
        <translation>Cualquiera</translation>
    </message>
    <message>
        <source>Drawing the paper...</source>
        <translation>Sorteando el examen...</translation>
    </message>
    <message>
        <source>There is no paper yet: choose coupons that can be asked first.</source>
        <translation>Aún no hay examen: elija primero cupones que se puedan preguntar.</translation>
    </message>
</context>
<context>
    <name>PartView</name>
    <message>
        <source>A sitting is made of coupons. Take them from a tray: then everybody is asked the same. Or let the dice make them: then each learner has their own, equally hard.</source>
        <translation>Una prueba se hace de cupones. Tómelos de una bandeja: entonces todos responden a los mismos. O deje que los hagan los dados: entonces cada aprendiz tiene los suyos, igual de difíciles.</translation>
    </message>
    <message>
        <source>From a tray</source>
        <translation>De una bandeja</translation>
    </message>
    <message>
        <source>From dice...</source>
        <translation>A los dados...</translation>
    </message>
    <message>
        <source>Tick all</source>
        <translation>Marcar todo</translation>
    </message>
    <message>
        <source>Untick all</source>
        <translation>Desmarcar</translation>
    </message>
    <message>
        <source>No.</source>
        <translation>N.º</translation>
    </message>
    <message>
        <source>Coupon</source>
        <translation>Cupón</translation>
    </message>
    <message>
        <source>Calls for</source>
        <translation>Pide</translation>
    </message>
    <message>
        <source>Face</source>
        <translation>Cara</translation>
    </message>
    <message>
        <source>Right call</source>
        <translation>Dictamen correcto</translation>
    </message>
    <message>
        <source>Coupons of the tray</source>
        <translation>Cupones de la bandeja</translation>
    </message>
    <message>
        <source>From dice</source>
        <translation>A los dados</translation>
    </message>
    <message>
        <source>Each learner is asked other welds, in another order: the same number of each right call, face and trap, each as far from its limit as everybody&apos;s. The same learner gets the same paper whenever this sitting is opened.</source>
        <translation>A cada aprendiz se le preguntan otras soldaduras, en otro orden: el mismo número de cada dictamen correcto, cara y trampa, y cada una tan lejos de su límite como la de los demás. El mismo aprendiz recibe el mismo examen siempre que se abra esta prueba.</translation>
    </message>
    <message>
        <source>Change the recipe...</source>
        <translation>Cambiar la receta...</translation>
    </message>
</context>
<context>
    <name>PartsPanel</name>
    <message>
        <source>Title of the sitting</source>
        <translation>Título de la prueba</translation>
    </message>
    <message>
        <source>seen by the learners</source>
        <translation>lo ven los aprendices</translation>
    </message>
    <message>
        <source>Coupons</source>
        <translation>Cupones</translation>
    </message>
    <message>
        <source>Where the coupons come from</source>
        <translation>De dónde salen los cupones</translation>
    </message>
    <message>
        <source>From a tray</source>
        <translation>De una bandeja</translation>
    </message>
    <message>
        <source>The same coupons for everybody</source>
        <translation>Los mismos cupones para todos</translation>
    </message>
    <message>
        <source>From dice...</source>
        <translation>A los dados...</translation>
    </message>
    <message>
        <source>Each learner their own, equally hard</source>
        <translation>A cada aprendiz los suyos, igual de difíciles</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Sacar</translation>
    </message>
    <message>
        <source>Take this part out</source>
        <translation>Sacar esta parte</translation>
    </message>
    <message>
        <source>This part earlier</source>
        <translation>Esta parte antes</translation>
    </message>
    <message>
        <source>This part later</source>
        <translation>Esta parte después</translation>
    </message>
    <message>
        <source>&amp;Open a tray...</source>
        <translation>&amp;Abrir una bandeja...</translation>
    </message>
    <message>
        <source>The tray on the &amp;bench</source>
        <translation>La bandeja del &amp;banco</translation>
    </message>
    <message>
        <source>The tray in the &amp;coupon shop</source>
        <translation>La bandeja del &amp;taller de cupones</translation>
    </message>
    <message>
        <source>&amp;Shipped trays</source>
        <translation>Bandejas &amp;incluidas</translation>
    </message>
</context>
<context>
    <name>PassphraseDialog</name>
    <message numerus="yes">
        <source>Bring in %n result file(s)</source>
        <translation>
            <numerusform>Incorporar %n archivo de resultados</numerusform>
            <numerusform>Incorporar %n archivos de resultados</numerusform>
        </translation>
    </message>
    <message>
        <source>They were sealed with the sitting&apos;s passphrase. It is asked for once and tried on each; files that another one seals are listed at the end.</source>
        <translation>Se sellaron con la frase de contraseña de la prueba. Se pide una vez y se prueba en cada uno; los que selle otra se enumeran al final.</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>Frase de contraseña</translation>
    </message>
    <message>
        <source>Show it</source>
        <translation>Mostrarla</translation>
    </message>
    <message>
        <source>Bring in</source>
        <translation>Incorporar</translation>
    </message>
</context>
<context>
    <name>PassphraseLine</name>
    <message>
        <source>The proctor&apos;s passphrase</source>
        <translation>La frase de quien vigila</translation>
    </message>
</context>
<context>
    <name>PeoplePanel</name>
    <message>
        <source>Learners here</source>
        <translation>Aprendices en este equipo</translation>
    </message>
    <message>
        <source>Whoever is chosen here is at the bench: calls are kept as theirs.</source>
        <translation>Quien se elige aquí está en el banco: los dictámenes se guardan como suyos.</translation>
    </message>
    <message>
        <source>Add learner...</source>
        <translation>Añadir aprendiz...</translation>
    </message>
    <message>
        <source>Rename...</source>
        <translation>Cambiar nombre...</translation>
    </message>
    <message>
        <source>Erase...</source>
        <translation>Borrar...</translation>
    </message>
    <message>
        <source>Export</source>
        <translation>Exportar</translation>
    </message>
    <message>
        <source>Sheet to print (PDF)...</source>
        <translation>Hoja para imprimir (PDF)...</translation>
    </message>
    <message>
        <source>Sheet for screen readers (HTML)...</source>
        <translation>Hoja para lectores de pantalla (HTML)...</translation>
    </message>
    <message>
        <source>Table of attempts (CSV)...</source>
        <translation>Tabla de intentos (CSV)...</translation>
    </message>
    <message>
        <source>Statements (xAPI)...</source>
        <translation>Declaraciones (xAPI)...</translation>
    </message>
    <message>
        <source>Backup</source>
        <translation>Copia</translation>
    </message>
    <message>
        <source>Back up all of it...</source>
        <translation>Copiarlo todo...</translation>
    </message>
    <message>
        <source>Put a backup back...</source>
        <translation>Reponer una copia...</translation>
    </message>
</context>
<context>
    <name>PeopleView</name>
    <message>
        <source>Add...</source>
        <translation>Añadir...</translation>
    </message>
    <message>
        <source>Ins</source>
        <translation>Ins</translation>
    </message>
    <message>
        <source>Add many...</source>
        <translation>Añadir varios...</translation>
    </message>
    <message>
        <source>Change...</source>
        <translation>Cambiar...</translation>
    </message>
    <message>
        <source>Groups</source>
        <translation>Grupos</translation>
    </message>
    <message>
        <source>Put those chosen into a group, or take them out</source>
        <translation>Incluir a los elegidos en un grupo, o sacarlos</translation>
    </message>
    <message>
        <source>Erase...</source>
        <translation>Borrar...</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Supr</translation>
    </message>
    <message>
        <source>Table</source>
        <translation>Tabla</translation>
    </message>
    <message>
        <source>&amp;Add from a file (CSV)...</source>
        <translation>&amp;Añadir de un archivo (CSV)...</translation>
    </message>
    <message>
        <source>&amp;Save as a file (CSV)...</source>
        <translation>&amp;Guardar como archivo (CSV)...</translation>
    </message>
    <message>
        <source>Code slips to &amp;print (PDF)...</source>
        <translation>Papeletas para &amp;imprimir (PDF)...</translation>
    </message>
    <message>
        <source>Find a name or a code</source>
        <translation>Buscar un nombre o un código</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Código</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Nombre</translation>
    </message>
    <message>
        <source>Calls</source>
        <translation>Dictámenes</translation>
    </message>
    <message>
        <source>Last</source>
        <translation>Último</translation>
    </message>
    <message>
        <source>Learners</source>
        <translation>Aprendices</translation>
    </message>
    <message>
        <source>Nobody is in the class yet. Add learners one by one, or many at once from a spreadsheet: each gets a code, by which they are known in sittings.</source>
        <translation>Aún no hay nadie en la clase. Añada aprendices de uno en uno, o varios a la vez de una hoja de cálculo: cada uno recibe un código, con el que se le conoce en las pruebas.</translation>
    </message>
    <message>
        <source>Nobody is in this group yet. Add learners here, or choose some of everybody and put them into it by the button Groups.</source>
        <translation>Aún no hay nadie en este grupo. Añada aprendices aquí, o elija algunos entre todos e inclúyalos con el botón Grupos.</translation>
    </message>
    <message numerus="yes">
        <source>%n learner(s) without a code: they can&apos;t sit, and nothing of them is sent.</source>
        <translation>
            <numerusform>%n aprendiz sin código: no puede hacer pruebas y nada suyo se envía.</numerusform>
            <numerusform>%n aprendices sin código: no pueden hacer pruebas y nada suyo se envía.</numerusform>
        </translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
</context>
<context>
    <name>Photo</name>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>Straighten</source>
        <translation>Enderezar</translation>
    </message>
    <message>
        <source>Scale</source>
        <translation>Escala</translation>
    </message>
    <message>
        <source>Members</source>
        <translation>Piezas</translation>
    </message>
    <message>
        <source>Trace</source>
        <translation>Trazar</translation>
    </message>
    <message>
        <source>Check</source>
        <translation>Revisar</translation>
    </message>
    <message>
        <source>The rectangle’s sides give the scale. If a longer length is known, click its two ends and say how long it is: it then counts instead.</source>
        <translation>Los lados del rectángulo dan la escala. Si se conoce una longitud mayor, haga clic en sus dos extremos y diga cuánto mide: entonces vale esa.</translation>
    </message>
    <message>
        <source>A picture of a weld, cut and etched: PNG, JPEG, TIFF or WebP. Take it square on, with a rule or a rectangle of known size beside the cut, in the same plane.</source>
        <translation>Una foto de una soldadura cortada y atacada: PNG, JPEG, TIFF o WebP. Tómela de frente, con una regla o un rectángulo de medida conocida junto al corte, en el mismo plano.</translation>
    </message>
    <message>
        <source>If the camera stood askew: click the four corners of a rectangle that lies in the plane of the cut, and say how long its sides are. Else go on.</source>
        <translation>Si la cámara estaba inclinada: haga clic en las cuatro esquinas de un rectángulo que esté en el plano del corte y diga cuánto miden sus lados. Si no, siga.</translation>
    </message>
    <message>
        <source>Click the two ends of a known length, and say how long it is.</source>
        <translation>Haga clic en los dos extremos de una longitud conocida y diga cuánto mide.</translation>
    </message>
    <message>
        <source>Click two points or more on the bare face of each member, clear of the weld and far apart. Where both lines meet is the root.</source>
        <translation>Haga clic en dos puntos o más de la cara libre de cada pieza, lejos del cordón y separados entre sí. Donde se cruzan las dos líneas está la raíz.</translation>
    </message>
    <message>
        <source>Click along the weld’s face from one toe to the other. Between clicks the line follows the strongest edge; where it strays, click on it, or place points by hand.</source>
        <translation>Haga clic a lo largo de la cara del cordón, de un borde al otro. Entre clic y clic la línea sigue el contorno más marcado; donde se desvíe, haga clic en él o ponga puntos a mano.</translation>
    </message>
    <message>
        <source>The section as it will be taken. Points can still be moved at every step.</source>
        <translation>La sección tal como se tomará. En cada paso aún se pueden mover los puntos.</translation>
    </message>
    <message>
        <source>{file}: {wrong}. Right would be: {right}.</source>
        <translation>{file}: {wrong}. Lo correcto sería: {right}.</translation>
    </message>
    <message>
        <source>{wrong}. Right would be: {right}.</source>
        <translation>{wrong}. Lo correcto sería: {right}.</translation>
    </message>
    <message>
        <source>One pixel</source>
        <translation>Un píxel</translation>
    </message>
    <message>
        <source>Angle</source>
        <translation>Ángulo</translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation>Cateto de la base</translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation>Cateto del montante</translation>
    </message>
    <message>
        <source>Actual throat</source>
        <translation>Garganta real</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>No point chosen</source>
        <translation>Ningún punto elegido</translation>
    </message>
    <message>
        <source>Corner {n}</source>
        <translation>Esquina {n}</translation>
    </message>
    <message>
        <source>End {n} of the length</source>
        <translation>Extremo {n} de la longitud</translation>
    </message>
    <message>
        <source>Base, point {n}</source>
        <translation>Base, punto {n}</translation>
    </message>
    <message>
        <source>Upright, point {n}</source>
        <translation>Montante, punto {n}</translation>
    </message>
    <message>
        <source>Face, point {n}</source>
        <translation>Cara, punto {n}</translation>
    </message>
    <message>
        <source>by hand</source>
        <translation>a mano</translation>
    </message>
    <message>
        <source>on an edge</source>
        <translation>en un contorno</translation>
    </message>
    <message>
        <source>{point}: {x}, {y} px, {how}</source>
        <translation>{point}: {x}; {y} px, {how}</translation>
    </message>
</context>
<context>
    <name>PhotoKeys</name>
    <message>
        <source>move the chosen point by a pixel, with Shift by 10, with Ctrl by 0.1</source>
        <translation>mover el punto elegido un píxel; con Mayús, 10; con Ctrl, 0,1</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Intro</translation>
    </message>
    <message>
        <source>put a point at the cross that the arrows move</source>
        <translation>poner un punto en la cruz que mueven las flechas</translation>
    </message>
    <message>
        <source>choose the point before, after</source>
        <translation>elegir el punto anterior, el siguiente</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Supr</translation>
    </message>
    <message>
        <source>take the chosen point out</source>
        <translation>quitar el punto elegido</translation>
    </message>
    <message>
        <source>points go to the edge nearby, or stay as put</source>
        <translation>los puntos van al contorno cercano o se quedan donde se ponen</translation>
    </message>
    <message>
        <source>mark the base, the upright</source>
        <translation>marcar la base, el montante</translation>
    </message>
    <message>
        <source>PgUp  PgDn</source>
        <translation>RePág  AvPág</translation>
    </message>
    <message>
        <source>the step before, the step after</source>
        <translation>el paso anterior, el siguiente</translation>
    </message>
    <message>
        <source>closer, back, the whole picture</source>
        <translation>acercar, alejar, la foto entera</translation>
    </message>
    <message>
        <source>Ctrl+Z  Ctrl+Y</source>
        <translation>Ctrl+Z  Ctrl+Y</translation>
    </message>
    <message>
        <source>undo, redo</source>
        <translation>deshacer, rehacer</translation>
    </message>
    <message>
        <source>Ctrl+O</source>
        <translation>Ctrl+O</translation>
    </message>
    <message>
        <source>choose a picture</source>
        <translation>elegir una foto</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>let the point go; back to the shop</source>
        <translation>soltar el punto; volver al taller</translation>
    </message>
    <message>
        <source>Points in the picture</source>
        <translation>Puntos en la foto</translation>
    </message>
    <message>
        <source>From a photo</source>
        <translation>De una foto</translation>
    </message>
</context>
<context>
    <name>PhotoPage</name>
    <message>
        <source>From a photo</source>
        <translation>De una foto</translation>
    </message>
    <message>
        <source>Picture</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>Choose a picture</source>
        <translation>Elegir una foto</translation>
    </message>
    <message>
        <source>Pictures ({suffixes})</source>
        <translation>Fotos ({suffixes})</translation>
    </message>
    <message>
        <source>Reading {file}...</source>
        <translation>Leyendo {file}...</translation>
    </message>
    <message>
        <source>{file}: {wide} × {high} pixels</source>
        <translation>{file}: {wide} × {high} píxeles</translation>
    </message>
    <message>
        <source>{file}: reduced {n} to 1, to {wide} × {high} pixels</source>
        <translation>{file}: reducida de {n} a 1, a {wide} × {high} píxeles</translation>
    </message>
</context>
<context>
    <name>PhotoPanel</name>
    <message>
        <source>From a photo</source>
        <translation>De una foto</translation>
    </message>
    <message>
        <source>Choose a picture...</source>
        <translation>Elegir una foto...</translation>
    </message>
    <message>
        <source>Known length</source>
        <translation>Longitud conocida</translation>
    </message>
    <message>
        <source>Keep the picture in the tray</source>
        <translation>Guardar la foto en la bandeja</translation>
    </message>
    <message>
        <source>Cut to the weld and made small, {n} KiB at most. It is shown behind the section in the shop and in the debrief; never before a call.</source>
        <translation>Recortada a la soldadura y reducida, {n} KiB como mucho. Se muestra detrás de la sección en el taller y en el repaso; nunca antes de un dictamen.</translation>
    </message>
    <message>
        <source>Two lengths</source>
        <translation>Dos longitudes</translation>
    </message>
    <message>
        <source>A square</source>
        <translation>Un cuadrado</translation>
    </message>
    <message>
        <source>A ratio</source>
        <translation>Proporción</translation>
    </message>
    <message>
        <source>Upper side</source>
        <translation>Lado superior</translation>
    </message>
    <message>
        <source>Left side</source>
        <translation>Lado izquierdo</translation>
    </message>
    <message>
        <source>Upper side, parts</source>
        <translation>Lado superior, partes</translation>
    </message>
    <message>
        <source>Left side, parts</source>
        <translation>Lado izquierdo, partes</translation>
    </message>
    <message>
        <source>Base</source>
        <translation>Base</translation>
    </message>
    <message>
        <source>Upright</source>
        <translation>Montante</translation>
    </message>
    <message>
        <source>± is twice the standard uncertainty, from pixels, points and lengths; what a lens bends isn’t in it.</source>
        <translation>± es el doble de la incertidumbre típica, por píxeles, puntos y longitudes; lo que deforma la lente no está incluido.</translation>
    </message>
    <message>
        <source>Show the whole picture (0)</source>
        <translation>Mostrar la foto entera (0)</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Next</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>{step}, done</source>
        <translation>{step}, hecho</translation>
    </message>
    <message>
        <source>Make a coupon of it</source>
        <translation>Hacer un cupón</translation>
    </message>
    <message>
        <source>It stands square on: next</source>
        <translation>Está de frente: siguiente</translation>
    </message>
</context>
<context>
    <name>PictureView</name>
    <message>
        <source>A picture can be dropped here</source>
        <translation>Puede soltar aquí una foto</translation>
    </message>
</context>
<context>
    <name>PicturesPage</name>
    <message>
        <source>Pictures of the class</source>
        <translation>Gráficos de la clase</translation>
    </message>
</context>
<context>
    <name>Placed</name>
    <message>
        <source>Nothing: the right leaf by the right edge, home, nothing owed.</source>
        <translation>Nada: la hoja correcta, por el canto correcto, arrimada, sin nada pendiente.</translation>
    </message>
    <message>
        <source>As it lies: {shown}</source>
        <translation>Tal como está: {shown}</translation>
    </message>
    <message>
        <source>{seat}: {shown}</source>
        <translation>{seat}: {shown}</translation>
    </message>
    <message>
        <source>Wrong edge</source>
        <translation>Canto equivocado</translation>
    </message>
    <message>
        <source>Wrong leaf</source>
        <translation>Hoja equivocada</translation>
    </message>
    <message>
        <source>Tilted</source>
        <translation>Inclinada</translation>
    </message>
    <message>
        <source>On spatter</source>
        <translation>Sobre salpicadura</translation>
    </message>
    <message>
        <source>One leg only</source>
        <translation>Un solo cateto</translation>
    </message>
    <message>
        <source>Wrong member</source>
        <translation>Pieza equivocada</translation>
    </message>
    <message>
        <source>Nothing is wrong</source>
        <translation>Nada falla</translation>
    </message>
    <message>
        <source>the face needs the other</source>
        <translation>la cara pide el otro</translation>
    </message>
    <message>
        <source>not the size called for</source>
        <translation>no es la medida indicada</translation>
    </message>
    <message>
        <source>not flush, it leans</source>
        <translation>no asienta, se ladea</translation>
    </message>
    <message>
        <source>a drop holds it up</source>
        <translation>una gota la levanta</translation>
    </message>
    <message>
        <source>the other is owed</source>
        <translation>falta el otro</translation>
    </message>
    <message>
        <source>it reads the other leg</source>
        <translation>lee el otro cateto</translation>
    </message>
    <message>
        <source>held as it should be</source>
        <translation>sujeta como se debe</translation>
    </message>
    <message>
        <source>Goes by: {mark}, throat edge</source>
        <translation>Se guía por: {mark}, canto de garganta</translation>
    </message>
    <message>
        <source>Goes by: {mark}, leg edge, base leg</source>
        <translation>Se guía por: {mark}, canto de cateto, base</translation>
    </message>
    <message>
        <source>Goes by: {mark}, leg edge, upright leg</source>
        <translation>Se guía por: {mark}, canto de cateto, montante</translation>
    </message>
    <message>
        <source>Legs gauged: none. They say they are done.</source>
        <translation>Catetos medidos: ninguno. Dice que ha terminado.</translation>
    </message>
    <message>
        <source>Legs gauged: base. They say they are done.</source>
        <translation>Catetos medidos: base. Dice que ha terminado.</translation>
    </message>
    <message>
        <source>Legs gauged: upright. They say they are done.</source>
        <translation>Catetos medidos: montante. Dice que ha terminado.</translation>
    </message>
    <message>
        <source>Legs gauged: base and upright. They say they are done.</source>
        <translation>Catetos medidos: base y montante. Dice que ha terminado.</translation>
    </message>
    <message>
        <source>Wrong leaf: {leaf}, where the limit needs {leaves}.</source>
        <translation>Hoja equivocada: {leaf}, donde el límite pide {leaves}.</translation>
    </message>
    <message>
        <source>Tilted: {degrees}° off, so its edge gapes by {opening} and it tells nothing.</source>
        <translation>Inclinada: {degrees}° de más, así que su canto se abre {opening} y no dice nada.</translation>
    </message>
    <message>
        <source>On spatter: a drop keeps it off the steel. Clean the toes, seat it again.</source>
        <translation>Sobre salpicadura: una gota la aparta del acero. Limpie los bordes y asiéntela de nuevo.</translation>
    </message>
    <message>
        <source>Wrong member: as it lies, the tip reads the {held_on} leg, not the {on} leg.</source>
        <translation>Pieza equivocada: tal como está, la punta lee el cateto de {held_on}, no el de {on}.</translation>
    </message>
    <message>
        <source>Wrong edge: a hollow face is gone by at the throat, with the throat edge.</source>
        <translation>Canto equivocado: una cara cóncava se decide en la garganta, con el canto de garganta.</translation>
    </message>
    <message>
        <source>Wrong edge: the two legs differ, and a spur on the bisector shows neither.</source>
        <translation>Canto equivocado: los dos catetos difieren, y un espolón en la bisectriz no muestra ninguno.</translation>
    </message>
    <message>
        <source>Wrong edge: the face is convex, and at the throat its crown flatters it. Its legs decide, with the leg edge.</source>
        <translation>Canto equivocado: la cara es convexa, y en la garganta su sobremonta la favorece. Deciden los catetos, con el canto de cateto.</translation>
    </message>
    <message>
        <source>One leg only, or not even that: both count, neither is gauged.</source>
        <translation>Un solo cateto, o ni eso: cuentan los dos y no se midió ninguno.</translation>
    </message>
    <message>
        <source>One leg only: the leg on the {member} was not gauged.</source>
        <translation>Un solo cateto: no se midió el cateto de la pieza {member}.</translation>
    </message>
</context>
<context>
    <name>PointTools</name>
    <message>
        <source>Move the point left</source>
        <translation>Mover el punto a la izquierda</translation>
    </message>
    <message>
        <source>Move the point up</source>
        <translation>Mover el punto hacia arriba</translation>
    </message>
    <message>
        <source>Move the point down</source>
        <translation>Mover el punto hacia abajo</translation>
    </message>
    <message>
        <source>Move the point right</source>
        <translation>Mover el punto a la derecha</translation>
    </message>
    <message>
        <source>On the edge</source>
        <translation>En el contorno</translation>
    </message>
    <message>
        <source>By hand</source>
        <translation>A mano</translation>
    </message>
    <message>
        <source>Points go to the strongest edge nearby (S)</source>
        <translation>Los puntos van al contorno más marcado cercano (S)</translation>
    </message>
    <message>
        <source>Points stay where they are put (S)</source>
        <translation>Los puntos se quedan donde se ponen (S)</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Anterior</translation>
    </message>
    <message>
        <source>Choose the point before  [</source>
        <translation>Elegir el punto anterior  [</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Siguiente</translation>
    </message>
    <message>
        <source>Choose the point after  ]</source>
        <translation>Elegir el punto siguiente  ]</translation>
    </message>
    <message>
        <source>Take out</source>
        <translation>Quitar</translation>
    </message>
    <message>
        <source>Take the chosen point out (Delete)</source>
        <translation>Quitar el punto elegido (Supr)</translation>
    </message>
</context>
<context>
    <name>ProctorDialog</name>
    <message>
        <source>Leave the sitting</source>
        <translation>Dejar la prueba</translation>
    </message>
    <message>
        <source>Only the proctor can let you leave before you hand in. The clock runs on meanwhile, and that you left will stand in the result.

Suspended, the sitting can be gone on with at this machine, at the same coupon; the time away is not counted.</source>
        <translation>Solo quien vigila puede dejarle salir antes de entregar. Mientras tanto el reloj sigue, y que salió constará en el resultado.

Suspendida, la prueba puede seguirse en este equipo, en el mismo cupón; el tiempo fuera no se cuenta.</translation>
    </message>
    <message>
        <source>The proctor&apos;s passphrase</source>
        <translation>La frase de quien vigila</translation>
    </message>
    <message>
        <source>End and hand in</source>
        <translation>Terminar y entregar</translation>
    </message>
    <message>
        <source>Suspend</source>
        <translation>Suspender</translation>
    </message>
    <message>
        <source>Go on with the sitting</source>
        <translation>Seguir con la prueba</translation>
    </message>
    <message>
        <source>Type the passphrase first.</source>
        <translation>Escriba primero la frase.</translation>
    </message>
    <message>
        <source>One moment…</source>
        <translation>Un momento…</translation>
    </message>
    <message>
        <source>That is not the passphrase of this sitting.</source>
        <translation>Esa no es la frase de esta prueba.</translation>
    </message>
</context>
<context>
    <name>ProgressDialog</name>
    <message>
        <source>Bringing results in</source>
        <translation>Incorporando resultados</translation>
    </message>
    <message>
        <source>How far it is</source>
        <translation>Cuánto lleva</translation>
    </message>
    <message>
        <source>Stop</source>
        <translation>Detener</translation>
    </message>
    <message>
        <source>{done} of {of} files</source>
        <translation>{done} de {of} archivos</translation>
    </message>
</context>
<context>
    <name>Rack</name>
    <message>
        <source>Rack</source>
        <translation>Estante</translation>
    </message>
</context>
<context>
    <name>RackPanel</name>
    <message>
        <source>Rack</source>
        <translation>Estante</translation>
    </message>
    <message>
        <source>Metric</source>
        <translation>Métrico</translation>
    </message>
    <message>
        <source>Metric leaves, marked by leg</source>
        <translation>Hojas métricas, marcadas por cateto</translation>
    </message>
    <message>
        <source>Inch</source>
        <translation>Pulgadas</translation>
    </message>
    <message>
        <source>Inch leaves, marked by leg</source>
        <translation>Hojas en pulgadas, marcadas por cateto</translation>
    </message>
    <message>
        <source>Throat-marked</source>
        <translation>Por garganta</translation>
    </message>
    <message>
        <source>Metric leaves, marked by throat</source>
        <translation>Hojas métricas, marcadas por garganta</translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation>Milímetros</translation>
    </message>
    <message>
        <source>Inches</source>
        <translation>Pulgadas</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>inch</source>
        <translation>in</translation>
    </message>
    <message>
        <source>Zoom out</source>
        <translation>Reducir</translation>
    </message>
    <message>
        <source>Fit</source>
        <translation>Encajar</translation>
    </message>
    <message>
        <source>Fit the picture</source>
        <translation>Encajar la imagen</translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation>Ampliar</translation>
    </message>
    <message>
        <source>Loupe</source>
        <translation>Lupa</translation>
    </message>
    <message>
        <source>Loupe on or off</source>
        <translation>Lupa sí o no</translation>
    </message>
    <message>
        <source>Throat</source>
        <translation>Garganta</translation>
    </message>
    <message>
        <source>click or drag; keys 3 to 8, [ ]</source>
        <translation>clic, arrastre o 3 a 8, [ ]</translation>
    </message>
    <message>
        <source>keys 1 to 9 by place, [ ]</source>
        <translation>teclas 1 a 9, [ ]</translation>
    </message>
    <message>
        <source>keys 3 to 8: a 3 to a 8, [ ]</source>
        <translation>teclas 3 a 8, [ ]</translation>
    </message>
    <message>
        <source>to look at only</source>
        <translation>solo para mirar</translation>
    </message>
</context>
<context>
    <name>ReadingRow</name>
    <message>
        <source>{tool}, in mid-air</source>
        <translation>{tool}, en el aire</translation>
    </message>
    <message>
        <source>Take back: {reading}</source>
        <translation>Retirar: {reading}</translation>
    </message>
    <message>
        <source>Take this reading back</source>
        <translation>Retirar esta lectura</translation>
    </message>
</context>
<context>
    <name>RecentMenu</name>
    <message>
        <source>None yet</source>
        <translation>Ninguna todavía</translation>
    </message>
    <message>
        <source>{at}  {name} (not there)</source>
        <translation>{at}  {name} (no está)</translation>
    </message>
    <message>
        <source>&amp;Clear this list</source>
        <translation>&amp;Vaciar esta lista</translation>
    </message>
</context>
<context>
    <name>RecordBar</name>
    <message>
        <source>Put it on record   Enter</source>
        <translation>Registrar   Intro</translation>
    </message>
    <message>
        <source>Put it on record</source>
        <translation>Registrar</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Intro</translation>
    </message>
    <message>
        <source>the face</source>
        <translation>la cara</translation>
    </message>
    <message>
        <source>the disposition</source>
        <translation>la disposición</translation>
    </message>
    <message>
        <source>a reading</source>
        <translation>una lectura</translation>
    </message>
    <message>
        <source>{words}   Enter</source>
        <translation>{words}   Intro</translation>
    </message>
    <message>
        <source>the size</source>
        <translation>la medida</translation>
    </message>
    <message>
        <source>what is wrong</source>
        <translation>qué falla</translation>
    </message>
    <message>
        <source>Still to state: {things}</source>
        <translation>Falta decir: {things}</translation>
    </message>
</context>
<context>
    <name>Reference</name>
    <message>
        <source>Source: {source}</source>
        <translation>Fuente: {source}</translation>
    </message>
    <message>
        <source>See also</source>
        <translation>Véase también</translation>
    </message>
    <message>
        <source>Own rule: this trainer&apos;s, from no document.</source>
        <translation>Regla propia: de este programa, de ningún documento.</translation>
    </message>
    <message>
        <source>Seen: the text itself was read.</source>
        <translation>Visto: se leyó el propio texto.</translation>
    </message>
    <message>
        <source>Second-hand: read where others repeat it.</source>
        <translation>De segunda mano: leído donde otros lo repiten.</translation>
    </message>
    <message>
        <source>From memory: not checked against its text. Check it before you rely on it.</source>
        <translation>De memoria: sin cotejar con su texto. Cotéjelo antes de fiarse.</translation>
    </message>
</context>
<context>
    <name>ReferenceKeys</name>
    <message>
        <source>search: the list follows what is typed</source>
        <translation>buscar: la lista sigue lo que se escribe</translation>
    </message>
    <message>
        <source>from the search into the list; there along it</source>
        <translation>de la búsqueda a la lista; allí, a lo largo de ella</translation>
    </message>
    <message>
        <source>in the list: open and shut a rule set</source>
        <translation>en la lista: abrir y cerrar un juego de reglas</translation>
    </message>
    <message>
        <source>read the entry; there Tab goes from link to link</source>
        <translation>leer la entrada; allí Tab va de enlace en enlace</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Intro</translation>
    </message>
    <message>
        <source>back to the entry before</source>
        <translation>volver a la entrada anterior</translation>
    </message>
    <message>
        <source>forward again</source>
        <translation>adelante de nuevo</translation>
    </message>
    <message>
        <source>copy the entry; Ctrl+C copies what is selected</source>
        <translation>copiar la entrada; Ctrl+C copia lo seleccionado</translation>
    </message>
    <message>
        <source>print the entry</source>
        <translation>imprimir la entrada</translation>
    </message>
    <message>
        <source>empty the search; then back to where a link led from</source>
        <translation>vaciar la búsqueda; luego volver a donde estaba el enlace</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Looking up</source>
        <translation>Consultar</translation>
    </message>
</context>
<context>
    <name>ReferenceScreen</name>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>Show all</source>
        <translation>Ver todo</translation>
    </message>
    <message>
        <source>Nothing says that. Try one word of it, or another word for it: leg, undercut, throat, the name of a standard.</source>
        <translation>Nada dice eso. Pruebe con una sola palabra, o con otra: cateto, mordedura, garganta, el nombre de una norma.</translation>
    </message>
    <message>
        <source>Back (Alt+Left)</source>
        <translation>Atrás (Alt+Izquierda)</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
    <message>
        <source>Forward (Alt+Right)</source>
        <translation>Adelante (Alt+Derecha)</translation>
    </message>
    <message>
        <source>Forward</source>
        <translation>Adelante</translation>
    </message>
    <message>
        <source>Back to where you were (Esc)</source>
        <translation>Volver a donde estaba (Esc)</translation>
    </message>
    <message>
        <source>Copy</source>
        <translation>Copiar</translation>
    </message>
    <message>
        <source>Copy this entry (Ctrl+Shift+C)</source>
        <translation>Copiar esta entrada (Ctrl+Mayús+C)</translation>
    </message>
    <message>
        <source>Save as PDF...</source>
        <translation>Guardar PDF...</translation>
    </message>
    <message>
        <source>Save this entry as a PDF</source>
        <translation>Guardar esta entrada como PDF</translation>
    </message>
    <message>
        <source>Print...</source>
        <translation>Imprimir...</translation>
    </message>
    <message>
        <source>Print this entry (Ctrl+P)</source>
        <translation>Imprimir esta entrada (Ctrl+P)</translation>
    </message>
    <message>
        <source>Copied</source>
        <translation>Copiado</translation>
    </message>
    <message>
        <source>Save as PDF</source>
        <translation>Guardar como PDF</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>The entry could not be saved</source>
        <translation>No se pudo guardar la entrada</translation>
    </message>
    <message>
        <source>{file}: {reason}

Whatever was there is as it was. Choose another folder, or free some space in this one.</source>
        <translation>{file}: {reason}

Lo que había sigue como estaba. Elija otra carpeta o libere espacio en esta.</translation>
    </message>
    <message>
        <source>Saved: {file}</source>
        <translation>Guardado: {file}</translation>
    </message>
    <message numerus="yes">
        <source>%n found</source>
        <comment>entries</comment>
        <translation>
            <numerusform>%n hallada</numerusform>
            <numerusform>%n halladas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n entries</source>
        <comment>in all</comment>
        <translation>
            <numerusform>%n entrada</numerusform>
            <numerusform>%n entradas</numerusform>
        </translation>
    </message>
    <message>
        <source>To the bench</source>
        <translation>Al banco</translation>
    </message>
    <message>
        <source>To the four corners</source>
        <translation>A los cuatro rincones</translation>
    </message>
    <message>
        <source>To the coupon shop</source>
        <translation>Al taller de cupones</translation>
    </message>
    <message>
        <source>Back to where you were</source>
        <translation>Volver a donde estaba</translation>
    </message>
</context>
<context>
    <name>Replay</name>
    <message>
        <source>takes a leaf</source>
        <translation>toma una hoja</translation>
    </message>
    <message>
        <source>sets it down</source>
        <translation>la posa</translation>
    </message>
    <message>
        <source>lays a hand on it</source>
        <translation>la agarra</translation>
    </message>
    <message>
        <source>drags</source>
        <translation>arrastra</translation>
    </message>
    <message>
        <source>lets go</source>
        <translation>suelta</translation>
    </message>
    <message>
        <source>moves it a little</source>
        <translation>la mueve un poco</translation>
    </message>
    <message>
        <source>turns it over</source>
        <translation>la voltea</translation>
    </message>
    <message>
        <source>turns it</source>
        <translation>la gira</translation>
    </message>
    <message>
        <source>presses home</source>
        <translation>arrima a fondo</translation>
    </message>
    <message>
        <source>swaps ends</source>
        <translation>cambia de extremo</translation>
    </message>
    <message>
        <source>puts it back</source>
        <translation>la devuelve</translation>
    </message>
    <message>
        <source>cleans the toes</source>
        <translation>limpia los bordes</translation>
    </message>
    <message>
        <source>takes a step back</source>
        <translation>deshace un paso</translation>
    </message>
    <message>
        <source>states a reading</source>
        <translation>dice una lectura</translation>
    </message>
    <message>
        <source>takes a reading back</source>
        <translation>retira una lectura</translation>
    </message>
    <message>
        <source>follows the guide</source>
        <translation>sigue la guía</translation>
    </message>
    <message>
        <source>puts the call on record</source>
        <translation>registra el dictamen</translation>
    </message>
</context>
<context>
    <name>ReplayPanel</name>
    <message>
        <source>Your handling</source>
        <translation>Su manejo</translation>
    </message>
    <message>
        <source>Truth and reasons  T</source>
        <translation>Verdad y razones  T</translation>
    </message>
    <message>
        <source>Show truth and reasons over the picture</source>
        <translation>Mostrar verdad y razones sobre la imagen</translation>
    </message>
    <message>
        <source>Moment of the handling</source>
        <translation>Momento del manejo</translation>
    </message>
    <message>
        <source>Mistake  N</source>
        <translation>Fallo  N</translation>
    </message>
    <message>
        <source>Go to the next mistake</source>
        <translation>Ir al fallo siguiente</translation>
    </message>
    <message>
        <source>Wedges over the line mark where something went wrong</source>
        <translation>Las cuñas sobre la línea marcan dónde algo salió mal</translation>
    </message>
    <message>
        <source>As it happened</source>
        <translation>Tal como fue</translation>
    </message>
    <message>
        <source>Held right  H</source>
        <translation>Bien sujeta  H</translation>
    </message>
    <message>
        <source>Somebody else&apos;s leaf, as it lay</source>
        <translation>La hoja de otro, tal como estaba</translation>
    </message>
    <message>
        <source>Lay the right handling over the picture: {seat}</source>
        <translation>Poner el manejo correcto sobre la imagen: {seat}</translation>
    </message>
    <message>
        <source>Pause  Space</source>
        <translation>Pausa  Espacio</translation>
    </message>
    <message>
        <source>Play  Space</source>
        <translation>Reproducir  Espacio</translation>
    </message>
    <message>
        <source>Pause</source>
        <translation>Pausa</translation>
    </message>
    <message>
        <source>Play</source>
        <translation>Reproducir</translation>
    </message>
    <message>
        <source>Photo  P</source>
        <translation>Foto  P</translation>
    </message>
    <message>
        <source>Show the picture that the section was taken from</source>
        <translation>Mostrar la foto de la que se tomó la sección</translation>
    </message>
    <message>
        <source>Click or drag to a moment; arrow keys go step by step, with Shift by pictures</source>
        <translation>Clic o arrastre a un momento; las flechas van paso a paso, con Mayús por imágenes</translation>
    </message>
    <message>
        <source>Pace</source>
        <translation>Ritmo</translation>
    </message>
    <message>
        <source>Pace {n} times</source>
        <translation>Ritmo: {n} veces</translation>
    </message>
    <message>
        <source>Slower  ,   faster  .</source>
        <translation>Más lento  ,   más rápido  .</translation>
    </message>
    <message>
        <source>Skip pauses  S</source>
        <translation>Saltar pausas  S</translation>
    </message>
    <message>
        <source>Skip the pauses</source>
        <translation>Saltar las pausas</translation>
    </message>
    <message>
        <source>{at} of {all} s</source>
        <translation>{at} de {all} s</translation>
    </message>
    <message>
        <source>at reading {n}</source>
        <translation>en la lectura {n}</translation>
    </message>
</context>
<context>
    <name>Results</name>
    <message>
        <source>No.</source>
        <translation>N.º</translation>
    </message>
    <message>
        <source>Place in the sitting as it was composed.</source>
        <translation>Lugar en la prueba tal como se compuso.</translation>
    </message>
    <message>
        <source>Coupon</source>
        <translation>Cupón</translation>
    </message>
    <message>
        <source>What it is called; dice give each learner their own, as hard.</source>
        <translation>Cómo se llama; los dados dan a cada aprendiz el suyo, igual de difícil.</translation>
    </message>
    <message>
        <source>Right call</source>
        <translation>Dictamen correcto</translation>
    </message>
    <message>
        <source>What the rules say of it (the key).</source>
        <translation>Lo que dicen las reglas de él (la clave).</translation>
    </message>
    <message>
        <source>Papers</source>
        <translation>Exámenes</translation>
    </message>
    <message>
        <source>How many papers have it.</source>
        <translation>Cuántos exámenes lo tienen.</translation>
    </message>
    <message>
        <source>Difficulty</source>
        <translation>Dificultad</translation>
    </message>
    <message>
        <source>Discrimination</source>
        <translation>Discriminación</translation>
    </message>
    <message>
        <source>Misses</source>
        <translation>Omisiones</translation>
    </message>
    <message>
        <source>False alarms</source>
        <translation>Falsas alarmas</translation>
    </message>
    <message>
        <source>Right</source>
        <translation>Bien</translation>
    </message>
    <message>
        <source>Alike</source>
        <translation>Igual</translation>
    </message>
    <message>
        <source>Time, s</source>
        <translation>Tiempo, s</translation>
    </message>
    <message>
        <source>Share of the papers that have it right: low is hard (item difficulty, p), with the 95 % that it lies in.</source>
        <translation>Parte de los exámenes que lo tienen bien: baja es difícil (dificultad del ítem, p), con el 95 % en que está.</translation>
    </message>
    <message>
        <source>Whether those who are better at the rest are better here: 0 not at all, below 0 worse (corrected point-biserial correlation), with its 95 %.</source>
        <translation>Si quienes van mejor en el resto van mejor aquí: 0 nada, bajo 0 peor (correlación biserial puntual corregida), con su 95 %.</translation>
    </message>
    <message>
        <source>Best less weakest</source>
        <translation>Mejores menos flojos</translation>
    </message>
    <message>
        <source>Share right among the best of the class less that among the weakest (upper-lower index, 27 % at either end).</source>
        <translation>Parte de aciertos entre los mejores de la clase menos la de los más flojos (índice de grupos extremos, 27 % a cada lado).</translation>
    </message>
    <message>
        <source>Bad welds let go, of those called, outside the doubt (misses).</source>
        <translation>Cordones malos que se dejaron pasar, de los dictaminados, fuera de la duda (omisiones).</translation>
    </message>
    <message>
        <source>Good welds that were rejected, of those called, outside the doubt (false alarms).</source>
        <translation>Cordones buenos que se rechazaron, de los dictaminados, fuera de la duda (falsas alarmas).</translation>
    </message>
    <message>
        <source>Papers that agree with the truth, doubt allowed for (accuracy).</source>
        <translation>Exámenes que coinciden con la verdad, contando la duda (exactitud).</translation>
    </message>
    <message>
        <source>How many gave the commonest call: whether the class agrees with itself, right or wrong (modal agreement).</source>
        <translation>Cuántos dieron el dictamen más común: si la clase coincide consigo misma, bien o mal (acuerdo modal).</translation>
    </message>
    <message>
        <source>Papers that say nothing of it (omitted).</source>
        <translation>Exámenes que no dicen nada de él (omitido).</translation>
    </message>
    <message>
        <source>Half of those who answered took less, half more (median time).</source>
        <translation>La mitad de quienes respondieron tardó menos, la mitad más (tiempo mediano).</translation>
    </message>
    <message>
        <source>Overridden</source>
        <translation>Cambiadas</translation>
    </message>
    <message>
        <source>How many marks of it were set by hand.</source>
        <translation>Cuántas notas suyas se pusieron a mano.</translation>
    </message>
    <message>
        <source>Any right call</source>
        <translation>Cualquier dictamen</translation>
    </message>
    <message>
        <source>What to look at</source>
        <translation>Qué mirar</translation>
    </message>
    <message>
        <source>All coupons</source>
        <translation>Todos los cupones</translation>
    </message>
    <message>
        <source>Hard</source>
        <translation>Difíciles</translation>
    </message>
    <message>
        <source>Easy</source>
        <translation>Fáciles</translation>
    </message>
    <message>
        <source>Below 0</source>
        <translation>Bajo 0</translation>
    </message>
    <message>
        <source>One of the two.</source>
        <translation>Uno de los dos.</translation>
    </message>
    <message>
        <source>and coupon</source>
        <translation>y cupón</translation>
    </message>
    <message>
        <source>The other.</source>
        <translation>El otro.</translation>
    </message>
    <message>
        <source>Wrong together</source>
        <translation>Fallados juntos</translation>
    </message>
    <message>
        <source>How many learners got both wrong.</source>
        <translation>Cuántos aprendices fallaron los dos.</translation>
    </message>
    <message>
        <source>{count} of {of}</source>
        <translation>{count} de {of}</translation>
    </message>
    <message>
        <source>By chance</source>
        <translation>Por azar</translation>
    </message>
    <message>
        <source>How many would be if each learner&apos;s and each coupon&apos;s errors fell at random (mean of random tables with the same margins), and the 95 % about it.</source>
        <translation>Cuántos serían si los errores de cada aprendiz y de cada cupón cayeran al azar (media de tablas al azar con los mismos márgenes), y el 95 % alrededor.</translation>
    </message>
    <message>
        <source>More than chance</source>
        <translation>Más que azar</translation>
    </message>
    <message>
        <source>Whether luck would rarely do that, looking at so many pairs (false discovery rate 5 %, Benjamini-Hochberg).</source>
        <translation>Si la suerte rara vez haría eso, mirando tantas parejas (tasa de falsos hallazgos 5 %, Benjamini-Hochberg).</translation>
    </message>
    <message>
        <source>may be luck</source>
        <translation>puede ser suerte</translation>
    </message>
    <message>
        <source>Ready if all three are shown with 95 % confidence: bad welds caught, good ones let through, the line where the limit is. A training record, no qualification.</source>
        <translation>Listo si se demuestran las tres cosas con un 95 % de confianza: cordones malos detectados, buenos aceptados, la línea donde está el límite. Un registro de práctica, no una cualificación.</translation>
    </message>
    <message>
        <source>Bad caught</source>
        <translation>Malos detectados</translation>
    </message>
    <message>
        <source>Bad welds that were rejected, outside the doubt; 29 of 29 would show nine in ten (exact binomial demonstration).</source>
        <translation>Cordones malos que se rechazaron, fuera de la duda; 29 de 29 demostrarían nueve de cada diez (demostración binomial exacta).</translation>
    </message>
    <message>
        <source>Good let through</source>
        <translation>Buenos aceptados</translation>
    </message>
    <message>
        <source>Good welds that were accepted: who rejects everything catches every bad one.</source>
        <translation>Cordones buenos que se aceptaron: quien rechaza todo detecta todos los malos.</translation>
    </message>
    <message>
        <source>Calls without a mistake, from now on, that would show what is missing.</source>
        <translation>Dictámenes sin fallo, desde ahora, que demostrarían lo que falta.</translation>
    </message>
    <message>
        <source>Where they begin to call a weld short: above 0 too early, below 0 too late (bias of the fitted line), with its 95 %.</source>
        <translation>Dónde empieza a dar un cordón por corto: sobre 0 demasiado pronto, bajo 0 demasiado tarde (sesgo de la línea ajustada), con su 95 %.</translation>
    </message>
    <message>
        <source>How blurred that line is (spread of the fitted line), with its 95 %.</source>
        <translation>Lo borrosa que es esa línea (dispersión de la línea ajustada), con su 95 %.</translation>
    </message>
    <message>
        <source>Calls that count: made before anything told how they went, at the bench or in sittings.</source>
        <translation>Dictámenes que cuentan: hechos antes de saber cómo iban, en el banco o en pruebas.</translation>
    </message>
    <message>
        <source>The latest call that counts.</source>
        <translation>El último dictamen que cuenta.</translation>
    </message>
    <message>
        <source>Strength</source>
        <translation>Fuerza</translation>
    </message>
    <message>
        <source>0 is none, 1 is always together (phi coefficient).</source>
        <translation>0 es nada, 1 es siempre juntos (coeficiente phi).</translation>
    </message>
    <message>
        <source>ready</source>
        <translation>listo</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>todavía no</translation>
    </message>
    <message>
        <source>not enough seen</source>
        <translation>poco visto</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Archivo</translation>
    </message>
    <message>
        <source>Came in</source>
        <translation>Incorporado</translation>
    </message>
    <message>
        <source>Code</source>
        <translation>Código</translation>
    </message>
    <message>
        <source>Sitting</source>
        <translation>Prueba</translation>
    </message>
    <message>
        <source>Why, and what to do</source>
        <translation>Por qué, y qué hacer</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>sí</translation>
    </message>
    <message>
        <source>was here already</source>
        <translation>ya estaba</translation>
    </message>
    <message>
        <source>yes, two of one code</source>
        <translation>sí, dos con un código</translation>
    </message>
    <message>
        <source>no</source>
        <translation>no</translation>
    </message>
    <message>
        <source>Here already: {count}.</source>
        <translation>Ya estaban: {count}.</translation>
    </message>
    <message>
        <source>With the code of another paper: {count}.</source>
        <translation>Con el código de otro examen: {count}.</translation>
    </message>
    <message>
        <source>Not come in, and nothing of it: {count}.</source>
        <translation>Sin incorporar, y nada de ello: {count}.</translation>
    </message>
    <message>
        <source>The same paper came in before; nothing was changed.</source>
        <translation>El mismo examen ya se había incorporado; no se cambió nada.</translation>
    </message>
    <message>
        <source>Another paper of this code is in the sitting. Both are kept and marked: see whose they are.</source>
        <translation>Hay otro examen con este código en la prueba. Se guardan y se marcan los dos: vea de quién son.</translation>
    </message>
    <message>
        <source>Answers: {count}.</source>
        <translation>Respuestas: {count}.</translation>
    </message>
    <message>
        <source>right would be {right}</source>
        <translation>lo correcto sería {right}</translation>
    </message>
    <message>
        <source>and {count} more</source>
        <translation>y {count} más</translation>
    </message>
    <message>
        <source>What the learner is called in sittings (pseudonym).</source>
        <translation>Cómo se llama el aprendiz en las pruebas (seudónimo).</translation>
    </message>
    <message>
        <source>Name here</source>
        <translation>Nombre aquí</translation>
    </message>
    <message>
        <source>The name that this machine&apos;s logbook knows.</source>
        <translation>El nombre que conoce el cuaderno de este equipo.</translation>
    </message>
    <message>
        <source>Ready?</source>
        <translation>¿Listo?</translation>
    </message>
    <message>
        <source>More needed</source>
        <translation>Faltan</translation>
    </message>
    <message>
        <source>Line, mm</source>
        <translation>Línea, mm</translation>
    </message>
    <message>
        <source>Blur, mm</source>
        <translation>Borrosidad, mm</translation>
    </message>
    <message>
        <source>Calls</source>
        <translation>Dictámenes</translation>
    </message>
    <message>
        <source>Latest</source>
        <translation>Último</translation>
    </message>
    <message>
        <source>Groups</source>
        <translation>Grupos</translation>
    </message>
    <message>
        <source>Of the class, as they stand on this machine.</source>
        <translation>De la clase, tal como están en este equipo.</translation>
    </message>
    <message>
        <source>Group</source>
        <translation>Grupo</translation>
    </message>
    <message>
        <source>All groups</source>
        <translation>Todos los grupos</translation>
    </message>
    <message>
        <source>Ready or not</source>
        <translation>Listos o no</translation>
    </message>
    <message>
        <source>{value} ({low} to {high})</source>
        <translation>{value} ({low} a {high})</translation>
    </message>
    <message>
        <source>score {score}, {needed} needed</source>
        <translation>puntuación {score}, hacen falta {needed}</translation>
    </message>
    <message>
        <source>{skill} {score}, {needed} needed</source>
        <translation>{skill} {score}, hacen falta {needed}</translation>
    </message>
    <message>
        <source>{skill} not shown, {needed} needed</source>
        <translation>{skill} sin mostrar, hacen falta {needed}</translation>
    </message>
    <message>
        <source>bad welds accepted: {count}</source>
        <translation>cordones malos aceptados: {count}</translation>
    </message>
    <message>
        <source>Passed, with {score}.</source>
        <translation>Aprobado, con {score}.</translation>
    </message>
    <message>
        <source>by dice, each their own</source>
        <translation>por dados, a cada uno el suyo</translation>
    </message>
    <message>
        <source>{call}, in doubt</source>
        <translation>{call}, en duda</translation>
    </message>
    <message>
        <source>bad</source>
        <translation>malo</translation>
    </message>
    <message>
        <source>good</source>
        <translation>bueno</translation>
    </message>
    <message>
        <source>what is wrong</source>
        <translation>qué está mal</translation>
    </message>
    <message>
        <source>a size</source>
        <translation>un tamaño</translation>
    </message>
    <message>
        <source>a reading</source>
        <translation>una lectura</translation>
    </message>
    <message>
        <source>Not passed, with {score}: {why}.</source>
        <translation>No aprobado, con {score}: {why}.</translation>
    </message>
    <message>
        <source>The name that this machine&apos;s logbook knows; no file carries it.</source>
        <translation>El nombre que conoce el cuaderno de este equipo; ningún archivo lo lleva.</translation>
    </message>
    <message>
        <source>Score</source>
        <translation>Puntuación</translation>
    </message>
    <message>
        <source>Mean of the coupons&apos; scores; unanswered and critical ones count 0 (total score).</source>
        <translation>Media de las puntuaciones de los cupones; los no respondidos y los críticos cuentan 0 (puntuación total).</translation>
    </message>
    <message>
        <source>Result</source>
        <translation>Resultado</translation>
    </message>
    <message>
        <source>Passed if every pass mark is reached and nothing stands against it.</source>
        <translation>Aprobado si se alcanza cada nota mínima y nada lo impide.</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Por qué</translation>
    </message>
    <message>
        <source>What the result hangs on.</source>
        <translation>De qué depende el resultado.</translation>
    </message>
    <message>
        <source>Passed</source>
        <translation>Aprobado</translation>
    </message>
    <message>
        <source>Not passed</source>
        <translation>No aprobado</translation>
    </message>
    <message>
        <source>{skill}: mean of this mark over the coupons that ask for it (subscore); marked where it is below its own pass mark.</source>
        <translation>{skill}: media de esta nota en los cupones que la piden (puntuación parcial); señalada donde no llega a su propia nota mínima.</translation>
    </message>
    <message>
        <source>Critical</source>
        <translation>Críticos</translation>
    </message>
    <message>
        <source>Calls that accept what the rules reject (critical errors).</source>
        <translation>Dictámenes que aceptan lo que las reglas rechazan (errores críticos).</translation>
    </message>
    <message>
        <source>Unanswered</source>
        <translation>Sin responder</translation>
    </message>
    <message>
        <source>Coupons without a call (omitted items); each scores 0.</source>
        <translation>Cupones sin dictamen (ítems omitidos); cada uno puntúa 0.</translation>
    </message>
    <message>
        <source>Time, min</source>
        <translation>Tiempo, min</translation>
    </message>
    <message>
        <source>Time used while the program ran; breaks are not in it.</source>
        <translation>Tiempo usado mientras el programa funcionaba; las interrupciones no cuentan.</translation>
    </message>
    <message>
        <source>Extra time</source>
        <translation>Tiempo extra</translation>
    </message>
    <message>
        <source>Share of time more than the others have (accommodation).</source>
        <translation>Parte de tiempo de más que los otros (adaptación).</translation>
    </message>
    <message>
        <source>Breaks</source>
        <translation>Cortes</translation>
    </message>
    <message>
        <source>How often it was broken off: closed, asleep, or the clock set (interruptions).</source>
        <translation>Cuántas veces se cortó: cerrado, en reposo o con el reloj cambiado (interrupciones).</translation>
    </message>
    <message>
        <source>Station</source>
        <translation>Equipo</translation>
    </message>
    <message>
        <source>The machine that it was sat on.</source>
        <translation>El equipo en que se hizo.</translation>
    </message>
    <message>
        <source>Handed in</source>
        <translation>Entregado</translation>
    </message>
    <message>
        <source>When it was handed in, by that machine&apos;s clock.</source>
        <translation>Cuándo se entregó, por el reloj de ese equipo.</translation>
    </message>
    <message>
        <source>Ended</source>
        <translation>Final</translation>
    </message>
    <message>
        <source>Whether the learner finished it, or the time did.</source>
        <translation>Si lo terminó el aprendiz o el tiempo.</translation>
    </message>
    <message>
        <source>Note</source>
        <translation>Nota</translation>
    </message>
    <message>
        <source>Whether there are two papers of one code, and how many marks were overridden.</source>
        <translation>Si hay dos exámenes con un código, y cuántas notas se cambiaron.</translation>
    </message>
    <message>
        <source>finished</source>
        <translation>terminado</translation>
    </message>
    <message>
        <source>time up</source>
        <translation>tiempo agotado</translation>
    </message>
    <message>
        <source>another paper of this code</source>
        <translation>otro examen con este código</translation>
    </message>
    <message>
        <source>marks overridden: {count}</source>
        <translation>notas cambiadas: {count}</translation>
    </message>
    <message>
        <source>Passed or not</source>
        <translation>Aprobados o no</translation>
    </message>
    <message>
        <source>Two of one code</source>
        <translation>Dos con un código</translation>
    </message>
    <message>
        <source>Skill below its mark</source>
        <translation>Habilidad bajo su mínimo</translation>
    </message>
    <message>
        <source>Any skills</source>
        <translation>Habilidades</translation>
    </message>
    <message>
        <source>Some skill below</source>
        <translation>Alguna bajo mínimo</translation>
    </message>
    <message>
        <source>{skill} below</source>
        <translation>{skill} bajo mínimo</translation>
    </message>
    <message>
        <source>Score of the coupon</source>
        <translation>Puntuación del cupón</translation>
    </message>
    <message>
        <source>Critical call</source>
        <translation>Dictamen crítico</translation>
    </message>
    <message>
        <source>unanswered</source>
        <translation>sin responder</translation>
    </message>
    <message>
        <source>Place in this learner&apos;s own order.</source>
        <translation>Lugar en el orden propio de este aprendiz.</translation>
    </message>
    <message>
        <source>What it is called.</source>
        <translation>Cómo se llama.</translation>
    </message>
    <message>
        <source>Call</source>
        <translation>Dictamen</translation>
    </message>
    <message>
        <source>What was stated.</source>
        <translation>Lo que se dijo.</translation>
    </message>
    <message>
        <source>Mean of its marks; 0 if critical or unanswered (item score).</source>
        <translation>Media de sus notas; 0 si es crítico o sin responder (puntuación del ítem).</translation>
    </message>
    <message>
        <source>How long it lay before the learner, all visits together.</source>
        <translation>Cuánto estuvo ante el aprendiz, todas las visitas juntas.</translation>
    </message>
    <message>
        <source>Visits</source>
        <translation>Visitas</translation>
    </message>
    <message>
        <source>How often the learner came to it.</source>
        <translation>Cuántas veces llegó a él el aprendiz.</translation>
    </message>
    <message>
        <source>Critical, in doubt, marked for review, or overridden.</source>
        <translation>Crítico, en duda, marcado para revisar o cambiado.</translation>
    </message>
    <message>
        <source>{now}, was {was}</source>
        <translation>{now}, era {was}</translation>
    </message>
    <message>
        <source>critical</source>
        <translation>crítico</translation>
    </message>
    <message>
        <source>in doubt</source>
        <translation>en duda</translation>
    </message>
    <message>
        <source>marked for review</source>
        <translation>marcado para revisar</translation>
    </message>
    <message>
        <source>overridden</source>
        <translation>cambiado</translation>
    </message>
    <message>
        <source>Scores by skill</source>
        <translation>Puntuaciones por habilidad</translation>
    </message>
    <message>
        <source>Difficulty and discrimination</source>
        <translation>Dificultad y discriminación</translation>
    </message>
    <message>
        <source>Misses and false alarms by distance to the limit</source>
        <translation>Omisiones y falsas alarmas por distancia al límite</translation>
    </message>
    <message>
        <source>Time by coupon</source>
        <translation>Tiempo por cupón</translation>
    </message>
    <message>
        <source>Score (dots: learners; bar: their middle half)</source>
        <translation>Puntuación (puntos: aprendices; barra: su mitad central)</translation>
    </message>
    <message>
        <source>Minutes (dots: learners; bar: their middle half)</source>
        <translation>Minutos (puntos: aprendices; barra: su mitad central)</translation>
    </message>
    <message>
        <source>Share of the papers that are right</source>
        <translation>Parte de los exámenes que están bien</translation>
    </message>
    <message>
        <source>below 0: the better do worse here</source>
        <translation>bajo 0: los mejores van peor aquí</translation>
    </message>
    <message>
        <source>misses ■</source>
        <translation>omisiones ■</translation>
    </message>
    <message>
        <source>● false alarms</source>
        <translation>● falsas alarmas</translation>
    </message>
    <message>
        <source>grey: within a leaf&apos;s doubt</source>
        <translation>gris: dentro de la duda de una hoja</translation>
    </message>
    <message>
        <source>Distance from the limit, mm (left: short of it)</source>
        <translation>Distancia al límite, mm (izquierda: no llega)</translation>
    </message>
    <message>
        <source>Called wrong</source>
        <translation>Mal dictaminados</translation>
    </message>
    <message>
        <source>Only {count} of {few} papers: nothing can be said of coupons but counts.</source>
        <translation>Solo {count} de {few} exámenes: de los cupones solo se pueden dar recuentos.</translation>
    </message>
    <message>
        <source>{count} papers are few: figures of coupons are rough below {enough}, as their ranges show.</source>
        <translation>{count} exámenes son pocos: por debajo de {enough} las cifras de los cupones son toscas, como muestran sus márgenes.</translation>
    </message>
    <message>
        <source>{passed} of {count} papers passed.</source>
        <translation>Aprobaron {passed} de {count} exámenes.</translation>
    </message>
    <message>
        <source>Half of the scores are at {middle} or above.</source>
        <translation>La mitad de las puntuaciones está en {middle} o más.</translation>
    </message>
    <message>
        <source>Papers with the code of another: {count}. See whose they are.</source>
        <translation>Exámenes con el código de otro: {count}. Vea de quién son.</translation>
    </message>
    <message>
        <source>One learner&apos;s score is good to about ±{reach} (95 %, standard error of measurement).</source>
        <translation>La puntuación de un aprendiz vale con unos ±{reach} (95 %, error típico de medida).</translation>
    </message>
    <message>
        <source>How well the coupons measure one thing: KR-20 {kr20}, alpha {alpha}, over {items} coupons and {papers} papers.</source>
        <translation>Hasta qué punto los cupones miden una sola cosa: KR-20 {kr20}, alfa {alpha}, con {items} cupones y {papers} exámenes.</translation>
    </message>
    <message>
        <source>Agreement with the truth beyond chance: kappa {kappa}.</source>
        <translation>Acuerdo con la verdad más allá del azar: kappa {kappa}.</translation>
    </message>
    <message>
        <source>With each other: Fleiss&apos; kappa {kappa}, over {places} coupons.</source>
        <translation>Entre ellos: kappa de Fleiss {kappa}, con {places} cupones.</translation>
    </message>
    <message>
        <source>No two coupons were got wrong by the same learners more often than chance would have it, given how weak each learner and how hard each coupon is.</source>
        <translation>Ninguna pareja de cupones la fallaron los mismos aprendices más de lo que haría el azar, dado lo flojo de cada aprendiz y lo difícil de cada cupón.</translation>
    </message>
    <message>
        <source>Pairs got wrong by the same learners more often than chance would have it, given how weak each learner and how hard each coupon is: {count}. One thing may be behind both.</source>
        <translation>Parejas falladas por los mismos aprendices más de lo que haría el azar, dado lo flojo de cada aprendiz y lo difícil de cada cupón: {count}. Una misma cosa puede estar detrás de las dos.</translation>
    </message>
    <message>
        <source>All</source>
        <translation>Todo</translation>
    </message>
    <message>
        <source>Nothing was handed in yet.</source>
        <translation>Aún no se ha entregado nada.</translation>
    </message>
    <message>
        <source>Weakest: {weak} (half of the class at {low} or above). Best: {best} ({high}).</source>
        <translation>Lo más flojo: {weak} (media clase en {low} o más). Lo mejor: {best} ({high}).</translation>
    </message>
    <message>
        <source>{name}: {below} of {of} below the pass mark of {mark}.</source>
        <translation>{name}: {below} de {of} bajo la nota mínima de {mark}.</translation>
    </message>
    <message>
        <source>All answers are alike: nothing tells learners apart.</source>
        <translation>Todas las respuestas son iguales: nada distingue a los aprendices.</translation>
    </message>
    <message>
        <source>Hardest: {coupons}.</source>
        <translation>Los más difíciles: {coupons}.</translation>
    </message>
    <message>
        <source>Below 0, where the better do worse: {coupons}. Look at these first; with few papers it may be luck, as the ranges show.</source>
        <translation>Bajo 0, donde los mejores van peor: {coupons}. Mire estos primero; con pocos exámenes puede ser suerte, como muestran los márgenes.</translation>
    </message>
    <message>
        <source>No call yet hangs on a size.</source>
        <translation>Aún ningún dictamen depende de un tamaño.</translation>
    </message>
    <message>
        <source>Short welds: {wrong} of {of} let go.</source>
        <translation>Cordones cortos: {wrong} de {of} dejados pasar.</translation>
    </message>
    <message>
        <source>Sound welds: {wrong} of {of} rejected.</source>
        <translation>Cordones buenos: {wrong} de {of} rechazados.</translation>
    </message>
    <message>
        <source>Near the limit nobody can be sure; far from it each one counts.</source>
        <translation>Cerca del límite nadie puede estar seguro; lejos de él cuenta cada uno.</translation>
    </message>
    <message>
        <source>No time was kept.</source>
        <translation>No se guardó ningún tiempo.</translation>
    </message>
    <message>
        <source>{coupon} ({minutes} min)</source>
        <translation>{coupon} ({minutes} min)</translation>
    </message>
    <message>
        <source>Slowest, by the middle of the class: {coupons}.</source>
        <translation>Los más lentos, por la mitad de la clase: {coupons}.</translation>
    </message>
    <message>
        <source>Calls made after being told how such calls went, which count for nothing here: {count}.</source>
        <translation>Dictámenes hechos tras saber cómo iban otros así, que aquí no cuentan: {count}.</translation>
    </message>
    <message>
        <source>{hits} of {trials} bad welds caught: that shows, with {confidence} confidence, that {share} or more are.</source>
        <translation>{hits} de {trials} cordones malos detectados: eso demuestra, con un {confidence} de confianza, que se detecta el {share} o más.</translation>
    </message>
    <message>
        <source>{hits} of {trials} bad welds caught: {share} isn&apos;t shown; {more} more without a miss would.</source>
        <translation>{hits} de {trials} cordones malos detectados: no se demuestra el {share}; {more} más sin omisión lo harían.</translation>
    </message>
    <message>
        <source>{hits} of {trials} bad welds caught: {more} more without a miss would show {share}.</source>
        <translation>{hits} de {trials} cordones malos detectados: {more} más sin omisión demostrarían el {share}.</translation>
    </message>
    <message>
        <source>{hits} of {trials} good welds let through: {share} or more, with {confidence} confidence.</source>
        <translation>{hits} de {trials} cordones buenos aceptados: el {share} o más, con un {confidence} de confianza.</translation>
    </message>
    <message>
        <source>{hits} of {trials} good welds let through: {share} isn&apos;t shown; {more} more without a false alarm would.</source>
        <translation>{hits} de {trials} cordones buenos aceptados: no se demuestra el {share}; {more} más sin falsa alarma lo harían.</translation>
    </message>
    <message>
        <source>{hits} of {trials} good welds let through: {more} more without a false alarm would show {share}.</source>
        <translation>{hits} de {trials} cordones buenos aceptados: {more} más sin falsa alarma demostrarían el {share}.</translation>
    </message>
    <message>
        <source>No bad weld called yet: {more} caught in a row would show {share}.</source>
        <translation>Aún no se ha dictaminado ningún cordón malo: {more} detectados seguidos demostrarían el {share}.</translation>
    </message>
    <message>
        <source>No good weld called yet: {more} let through in a row would show {share}.</source>
        <translation>Aún no se ha dictaminado ningún cordón bueno: {more} aceptados seguidos demostrarían el {share}.</translation>
    </message>
    <message>
        <source>{calls} of the {needed} calls near a limit that would say where the line is.</source>
        <translation>{calls} de los {needed} dictámenes cerca de un límite que dirían dónde está la línea.</translation>
    </message>
    <message>
        <source>The line lies {middle} (95 %: {low} to {high}), blurred by {blur}:</source>
        <translation>La línea está {middle} (95 %: {low} a {high}), borrosa en {blur}:</translation>
    </message>
    <message>
        <source>{away} off the limit the calls are as sure as asked.</source>
        <translation>a {away} del límite los dictámenes son tan seguros como se pide.</translation>
    </message>
    <message>
        <source>{away} off the limit too many calls go wrong.</source>
        <translation>a {away} del límite fallan demasiados dictámenes.</translation>
    </message>
    <message>
        <source>more calls would tell whether {away} off the limit is surely told.</source>
        <translation>más dictámenes dirían si a {away} del límite se distingue con seguridad.</translation>
    </message>
    <message>
        <source>at the limit</source>
        <translation>en el límite</translation>
    </message>
    <message>
        <source>{off} above it</source>
        <translation>{off} por encima</translation>
    </message>
    <message>
        <source>{off} below it</source>
        <translation>{off} por debajo</translation>
    </message>
    <message>
        <source>Results of {sitting}</source>
        <translation>Resultados de {sitting}</translation>
    </message>
    <message>
        <source>Learners</source>
        <translation>Aprendices</translation>
    </message>
    <message>
        <source>Coupons</source>
        <translation>Cupones</translation>
    </message>
</context>
<context>
    <name>ResultsPage</name>
    <message>
        <source>Results</source>
        <translation>Resultados</translation>
    </message>
    <message>
        <source>Reading...</source>
        <translation>Leyendo...</translation>
    </message>
    <message>
        <source>{who}: {sitting}</source>
        <translation>{who}: {sitting}</translation>
    </message>
    <message>
        <source>The logbook of this machine knows nothing of this learner.</source>
        <translation>El cuaderno de este equipo no sabe nada de este aprendiz.</translation>
    </message>
    <message>
        <source>This paper can&apos;t be read by this version of the program.</source>
        <translation>Esta versión del programa no puede leer este examen.</translation>
    </message>
    <message>
        <source>This paper isn&apos;t there any more.</source>
        <translation>Este examen ya no está.</translation>
    </message>
</context>
<context>
    <name>RetentionPanel</name>
    <message>
        <source>Kept for days</source>
        <translation>Días que se guarda</translation>
    </message>
    <message>
        <source>for good</source>
        <translation>siempre</translation>
    </message>
    <message>
        <source>What a learner did longer ago than that is due to be erased. Of several groups the longest holds; who is in none is kept for good. Nothing is erased by itself.</source>
        <translation>Lo que un aprendiz hizo hace más tiempo vence y se puede borrar. Entre varios grupos vale el plazo más largo; de quien no está en ninguno se guarda siempre. Nada se borra solo.</translation>
    </message>
    <message>
        <source>See what is due</source>
        <translation>Ver lo vencido</translation>
    </message>
    <message>
        <source>Name here</source>
        <translation>Nombre aquí</translation>
    </message>
    <message>
        <source>Calls</source>
        <translation>Dictámenes</translation>
    </message>
    <message>
        <source>Papers</source>
        <translation>Exámenes</translation>
    </message>
    <message>
        <source>Stays</source>
        <translation>Queda</translation>
    </message>
    <message>
        <source>What is due to be erased</source>
        <translation>Lo vencido, que se puede borrar</translation>
    </message>
    <message>
        <source>Erase what is due...</source>
        <translation>Borrar lo vencido...</translation>
    </message>
    <message>
        <source>Choose a group to say how long.</source>
        <translation>Elija un grupo para decir cuánto.</translation>
    </message>
    <message>
        <source>Nothing is due.</source>
        <translation>Nada ha vencido.</translation>
    </message>
    <message numerus="yes">
        <source>Of {learners} something is due: %n call(s) in all.</source>
        <translation>
            <numerusform>De {learners} ha vencido algo: %n dictamen en total.</numerusform>
            <numerusform>De {learners} ha vencido algo: %n dictámenes en total.</numerusform>
        </translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nada</translation>
    </message>
    <message>
        <source>the rest</source>
        <translation>el resto</translation>
    </message>
    <message>
        <source>Right would be: 1 to {most}, or nothing</source>
        <translation>Sería correcto: de 1 a {most}, o nada</translation>
    </message>
    <message>
        <source>{name}: {calls} before {day}</source>
        <translation>{name}: {calls} antes del {day}</translation>
    </message>
    <message>
        <source>nothing stays, and the learner goes too</source>
        <translation>no queda nada, y el aprendiz se va también</translation>
    </message>
</context>
<context>
    <name>RulesStep</name>
    <message>
        <source>Fill the screen until it is handed in</source>
        <translation>Ocupar toda la pantalla hasta la entrega</translation>
    </message>
    <message>
        <source>Begin: the clock starts</source>
        <translation>Empezar: el reloj arranca</translation>
    </message>
    <message>
        <source>Back</source>
        <translation>Atrás</translation>
    </message>
</context>
<context>
    <name>Running</name>
    <message>
        <source>Look over, and hand in...</source>
        <translation>Repasar, y entregar...</translation>
    </message>
    <message>
        <source>Next coupon</source>
        <translation>Cupón siguiente</translation>
    </message>
    <message>
        <source>There is no other coupon that way.</source>
        <translation>No hay otro cupón por ahí.</translation>
    </message>
    <message>
        <source>Bench</source>
        <translation>Banco</translation>
    </message>
    <message>
        <source>This sitting</source>
        <translation>Esta prueba</translation>
    </message>
    <message>
        <source>{what}. {then} Your call is still on the bench; the next coupon waits until it is kept.</source>
        <translation>{what}. {then} Su dictamen sigue en el banco; el cupón siguiente espera hasta que esté guardado.</translation>
    </message>
    <message>
        <source>Try again</source>
        <translation>Probar otra vez</translation>
    </message>
</context>
<context>
    <name>Scan</name>
    <message>
        <source>Base toe</source>
        <translation>Borde de la base</translation>
    </message>
    <message>
        <source>Upright toe</source>
        <translation>Borde del montante</translation>
    </message>
    <message>
        <source>Root</source>
        <translation>Raíz</translation>
    </message>
    <message>
        <source>Base, near end</source>
        <translation>Base, cerca</translation>
    </message>
    <message>
        <source>Base, far end</source>
        <translation>Base, lejos</translation>
    </message>
    <message>
        <source>Upright, near end</source>
        <translation>Montante, cerca</translation>
    </message>
    <message>
        <source>Upright, far end</source>
        <translation>Montante, lejos</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>µm</source>
        <translation>µm</translation>
    </message>
    <message>
        <source>cm</source>
        <translation>cm</translation>
    </message>
    <message>
        <source>m</source>
        <translation>m</translation>
    </message>
    <message>
        <source>in</source>
        <translation>in</translation>
    </message>
    <message>
        <source>mil (1/1000 in)</source>
        <translation>mil (1/1000 in)</translation>
    </message>
    <message>
        <source>Base leg {length}</source>
        <translation>Cateto de la base {length}</translation>
    </message>
    <message>
        <source>Upright leg {length}</source>
        <translation>Cateto del montante {length}</translation>
    </message>
    <message>
        <source>Root, {angle}</source>
        <translation>Raíz, {angle}</translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation>Cateto de la base</translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation>Cateto del montante</translation>
    </message>
    <message>
        <source>Actual throat</source>
        <translation>Garganta real</translation>
    </message>
    <message>
        <source>Angle</source>
        <translation>Ángulo</translation>
    </message>
    <message>
        <source>Points of the face</source>
        <translation>Puntos de la cara</translation>
    </message>
    <message>
        <source>Scatter of the points</source>
        <translation>Dispersión de los puntos</translation>
    </message>
    <message>
        <source>Pasted</source>
        <translation>Pegado</translation>
    </message>
    <message>
        <source>tabs</source>
        <translation>tabuladores</translation>
    </message>
    <message>
        <source>blanks</source>
        <translation>espacios</translation>
    </message>
    <message>
        <source>{name}: {points}; columns parted by {mark}, decimals by {decimal}</source>
        <translation>{name}: {points}; columnas separadas por {mark}, decimales por {decimal}</translation>
    </message>
    <message>
        <source>kept</source>
        <translation>tomado</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>excluido</translation>
    </message>
    <message>
        <source>nothing seen here</source>
        <translation>aquí no se vio nada</translation>
    </message>
    <message>
        <source>The file doesn’t say its unit: choose it. As mm it would reach over {mm}, as inches over {inch}, as µm over {micron}.</source>
        <translation>El archivo no dice su unidad: elíjala. En mm abarcaría {mm}; en pulgadas, {inch}; en µm, {micron}.</translation>
    </message>
    <message>
        <source>{n}: {length} long, open</source>
        <translation>{n}: {length} de largo, abierto</translation>
    </message>
    <message>
        <source>{n}: {length} long, closed</source>
        <translation>{n}: {length} de largo, cerrado</translation>
    </message>
    <message>
        <source>Left out: {what}.</source>
        <translation>Excluido: {what}.</translation>
    </message>
    <message>
        <source>Of every {n} points one is used.</source>
        <translation>De cada {n} puntos se usa uno.</translation>
    </message>
    <message>
        <source>Line {n}: </source>
        <translation>Línea {n}: </translation>
    </message>
    <message>
        <source>{where}{wrong}. Right would be: {right}.</source>
        <translation>{where}{wrong}. Lo correcto: {right}.</translation>
    </message>
</context>
<context>
    <name>ScanKeys</name>
    <message>
        <source>move the chosen handle by 0.1 mm, with Shift by 1, with Ctrl by 0.01</source>
        <translation>mover el tirador elegido 0,1 mm, con Mayús 1, con Ctrl 0,01</translation>
    </message>
    <message>
        <source>choose the handle before, after</source>
        <translation>elegir el tirador anterior, el siguiente</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Supr</translation>
    </message>
    <message>
        <source>put the chosen handle back where it was proposed</source>
        <translation>devolver el tirador elegido a donde se propuso</translation>
    </message>
    <message>
        <source>base and upright change places</source>
        <translation>base y montante cambian de lugar</translation>
    </message>
    <message>
        <source>closer, back, the whole</source>
        <translation>acercar, alejar, todo</translation>
    </message>
    <message>
        <source>Ctrl+Z  Ctrl+Y</source>
        <translation>Ctrl+Z  Ctrl+Y</translation>
    </message>
    <message>
        <source>undo, redo</source>
        <translation>deshacer, rehacer</translation>
    </message>
    <message>
        <source>Ctrl+O  Ctrl+V</source>
        <translation>Ctrl+O  Ctrl+V</translation>
    </message>
    <message>
        <source>choose a file, paste points</source>
        <translation>elegir archivo, pegar puntos</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>back to the shop</source>
        <translation>volver al taller</translation>
    </message>
    <message>
        <source>Handles in the plot</source>
        <translation>Tiradores del gráfico</translation>
    </message>
    <message>
        <source>From a scan or drawing</source>
        <translation>De un escaneo o dibujo</translation>
    </message>
</context>
<context>
    <name>ScanPage</name>
    <message>
        <source>From a scan or drawing</source>
        <translation>De un escaneo o dibujo</translation>
    </message>
    <message>
        <source>Plot of the points</source>
        <translation>Gráfico de los puntos</translation>
    </message>
    <message>
        <source>Choose a scan or a drawing</source>
        <translation>Elegir un escaneo o un dibujo</translation>
    </message>
    <message>
        <source>Scans and drawings ({suffixes})</source>
        <translation>Escaneos y dibujos ({suffixes})</translation>
    </message>
    <message>
        <source>All files (*)</source>
        <translation>Todos los archivos (*)</translation>
    </message>
    <message>
        <source>Nothing to paste: copy two columns of numbers first.</source>
        <translation>Nada que pegar: copie antes dos columnas de números.</translation>
    </message>
    <message>
        <source>Choose or drop a file here, or paste points: x and z in columns (CSV, TSV), or an outline (DXF, SVG).</source>
        <translation>Elija o suelte aquí un archivo, o pegue puntos: x y z en columnas (CSV, TSV), o un contorno (DXF, SVG).</translation>
    </message>
</context>
<context>
    <name>ScanPanel</name>
    <message>
        <source>From a scan or drawing</source>
        <translation>De un escaneo o dibujo</translation>
    </message>
    <message>
        <source>Show all points (0)</source>
        <translation>Mostrar todos los puntos (0)</translation>
    </message>
    <message>
        <source>Make a coupon of it</source>
        <translation>Hacer un cupón</translation>
    </message>
    <message>
        <source>Choose a file...</source>
        <translation>Elegir archivo...</translation>
    </message>
    <message>
        <source>Paste points</source>
        <translation>Pegar puntos</translation>
    </message>
    <message>
        <source>Two columns, x and z, as copied elsewhere (Ctrl+V)</source>
        <translation>Dos columnas, x y z, copiadas en otra parte (Ctrl+V)</translation>
    </message>
    <message>
        <source>± is twice the standard uncertainty, from how the points scatter; what a scanner gets wrong everywhere isn’t in it.</source>
        <translation>± es el doble de la incertidumbre típica, según la dispersión de los puntos; lo que un escáner yerra por igual en todas partes no está incluido.</translation>
    </message>
    <message>
        <source>Unit of the file</source>
        <translation>Unidad del archivo</translation>
    </message>
    <message>
        <source>x from</source>
        <translation>x de</translation>
    </message>
    <message>
        <source>z from</source>
        <translation>z de</translation>
    </message>
    <message>
        <source>Drag a handle, or choose one here and click where it belongs.</source>
        <translation>Arrastre un tirador, o elija uno aquí y haga clic donde corresponde.</translation>
    </message>
    <message>
        <source>Swap members</source>
        <translation>Permutar piezas</translation>
    </message>
    <message>
        <source>Base and upright change places (X)</source>
        <translation>Base y montante cambian de lugar (X)</translation>
    </message>
    <message>
        <source>Move the handle left</source>
        <translation>Mover el tirador a la izquierda</translation>
    </message>
    <message>
        <source>Move the handle up</source>
        <translation>Mover el tirador hacia arriba</translation>
    </message>
    <message>
        <source>Move the handle down</source>
        <translation>Mover el tirador hacia abajo</translation>
    </message>
    <message>
        <source>Move the handle right</source>
        <translation>Mover el tirador a la derecha</translation>
    </message>
    <message>
        <source>Put back</source>
        <translation>Devolver</translation>
    </message>
    <message>
        <source>Where it was proposed (Delete)</source>
        <translation>A donde se propuso (Supr)</translation>
    </message>
    <message>
        <source>Tolerance of the face</source>
        <translation>Tolerancia de la cara</translation>
    </message>
    <message>
        <source>Take the scatter out of the face</source>
        <translation>Quitar la dispersión de la cara</translation>
    </message>
    <message>
        <source>Reading...</source>
        <translation>Leyendo...</translation>
    </message>
    <message>
        <source>Tick the outlines that make the section.</source>
        <translation>Marque los contornos que forman la sección.</translation>
    </message>
    <message>
        <source>as stated</source>
        <translation>según consta</translation>
    </message>
    <message>
        <source>choose...</source>
        <translation>elegir...</translation>
    </message>
</context>
<context>
    <name>School</name>
    <message>
        <source>What speaks to PostgreSQL isn&apos;t installed</source>
        <translation>Falta lo que habla con PostgreSQL</translation>
    </message>
    <message>
        <source>Install it: pip install &apos;toe-and-throat[school]&apos;</source>
        <translation>Instálelo: pip install &apos;toe-and-throat[school]&apos;</translation>
    </message>
    <message>
        <source>That is no address of a PostgreSQL server</source>
        <translation>No es la dirección de un servidor PostgreSQL</translation>
    </message>
    <message>
        <source>Right would be: postgresql://station@host:5432/school</source>
        <translation>Correcto sería: postgresql://puesto@servidor:5432/escuela</translation>
    </message>
    <message>
        <source>The server can&apos;t be reached</source>
        <translation>No se llega al servidor</translation>
    </message>
    <message>
        <source>The server took too long to answer</source>
        <translation>El servidor tardó demasiado en responder</translation>
    </message>
    <message>
        <source>The server refuses the name or the password</source>
        <translation>El servidor rechaza el nombre o la contraseña</translation>
    </message>
    <message>
        <source>The server has no such database</source>
        <translation>El servidor no tiene esa base de datos</translation>
    </message>
    <message>
        <source>Its name stands at the end of the address.</source>
        <translation>Su nombre está al final de la dirección.</translation>
    </message>
    <message>
        <source>The server doesn&apos;t let this user do that</source>
        <translation>El servidor no se lo permite a este usuario</translation>
    </message>
    <message>
        <source>No encrypted connection came about</source>
        <translation>No se logró una conexión cifrada</translation>
    </message>
    <message>
        <source>See whether the network is there, and the server runs.</source>
        <translation>Compruebe que hay red y que el servidor está en marcha.</translation>
    </message>
    <message>
        <source>It may be busy, or the network slow.</source>
        <translation>Puede estar ocupado, o la red ir lenta.</translation>
    </message>
    <message>
        <source>Type the password that was given out, beside the address.</source>
        <translation>Escriba la contraseña que se le dio, junto a la dirección.</translation>
    </message>
    <message>
        <source>A station&apos;s login may send, an instructor&apos;s may read as well: the server&apos;s administrator puts each into its role.</source>
        <translation>El usuario de un puesto puede enviar; el de un instructor puede además leer: el administrador del servidor da a cada uno su papel.</translation>
    </message>
    <message>
        <source>Its administrator says which one it takes (sslmode), and by which certificate (sslrootcert).</source>
        <translation>Su administrador dice cuál admite (sslmode) y con qué certificado (sslrootcert).</translation>
    </message>
    <message>
        <source>The database has no tables of this program</source>
        <translation>La base de datos no tiene tablas de este programa</translation>
    </message>
    <message>
        <source>Its administrator makes them: toe-and-throat school URL</source>
        <translation>Quien lo administra las crea: toe-and-throat school URL</translation>
    </message>
    <message>
        <source>The server&apos;s tables are of an older version</source>
        <translation>Las tablas del servidor son de una versión anterior</translation>
    </message>
    <message>
        <source>Its administrator brings them up to date: toe-and-throat school URL</source>
        <translation>Quien lo administra las pone al día: toe-and-throat school URL</translation>
    </message>
    <message>
        <source>The server&apos;s tables are of a newer version</source>
        <translation>Las tablas del servidor son de una versión posterior</translation>
    </message>
    <message>
        <source>This program has to be brought up to date.</source>
        <translation>Hay que actualizar este programa.</translation>
    </message>
    <message>
        <source>The server is too busy just now, or starting</source>
        <translation>El servidor está demasiado ocupado, o arrancando</translation>
    </message>
    <message>
        <source>Some moments later it may answer.</source>
        <translation>Dentro de unos momentos puede que responda.</translation>
    </message>
    <message>
        <source>The server has no room left</source>
        <translation>Al servidor no le queda espacio</translation>
    </message>
    <message>
        <source>Tell its administrator. What is here waits.</source>
        <translation>Avise a quien lo administra. Lo de aquí espera.</translation>
    </message>
    <message>
        <source>The server refuses some of what was to be sent</source>
        <translation>El servidor rechaza parte de lo que iba a enviarse</translation>
    </message>
    <message>
        <source>The rest was sent. Tell its administrator what it says.</source>
        <translation>El resto se envió. Diga a quien lo administra lo que dice.</translation>
    </message>
    <message>
        <source>The server answers with an error</source>
        <translation>El servidor responde con un error</translation>
    </message>
    <message>
        <source>Tell its administrator what it says.</source>
        <translation>Diga a quien lo administra lo que dice.</translation>
    </message>
    <message>
        <source>It says: {words}</source>
        <translation>Dice: {words}</translation>
    </message>
</context>
<context>
    <name>Seal</name>
    <message>
        <source>Whoever has the file can try as many passphrases as they like. Length is what stops them: several words that have nothing to do with each other.</source>
        <translation>Quien tenga el archivo puede probar tantas frases como quiera. Lo que le detiene es la longitud: varias palabras que no tengan que ver entre sí.</translation>
    </message>
    <message>
        <source>Too short: at least {least} characters.</source>
        <translation>Demasiado corta: al menos {least} caracteres.</translation>
    </message>
    <message>
        <source>Weak: found by trying, by somebody who wants to. Make it longer.</source>
        <translation>Débil: la encuentra probando quien se lo proponga. Hágala más larga.</translation>
    </message>
    <message>
        <source>Fair, if it is no name, no date and no saying. Longer is better.</source>
        <translation>Aceptable, si no es un nombre, una fecha ni un dicho. Más larga es mejor.</translation>
    </message>
    <message>
        <source>Long. Good, unless it is a line that others know too.</source>
        <translation>Larga. Buena, salvo que sea una frase que otros también conozcan.</translation>
    </message>
    <message>
        <source>Without the passphrase nobody can read the coupons, the right calls or the marks.</source>
        <translation>Sin la frase nadie puede leer los cupones, los dictámenes correctos ni las notas.</translation>
    </message>
    <message>
        <source>A sitting or a result of which one byte was changed is refused.</source>
        <translation>Una prueba o un resultado con un solo byte cambiado se rechaza.</translation>
    </message>
    <message>
        <source>Result files are sealed with it too: nobody reads or changes them on their way to you.</source>
        <translation>Los archivos de resultados se sellan también con ella: nadie los lee ni los cambia de camino a usted.</translation>
    </message>
    <message>
        <source>On a learner&apos;s own machine the opened sitting lies in its memory: who owns the machine can get at it, or at the program itself.</source>
        <translation>En el equipo de un aprendiz la prueba abierta está en su memoria: el dueño del equipo puede llegar a ella, o al propio programa.</translation>
    </message>
    <message>
        <source>What was handed in lies in the logbook of that machine as well. The program shows it only for the passphrase, but the file is not sealed.</source>
        <translation>Lo entregado queda también en el cuaderno de ese equipo. El programa solo lo muestra con la frase de contraseña, pero el archivo no está sellado.</translation>
    </message>
    <message>
        <source>A screen can be photographed, and a neighbour asked.</source>
        <translation>Una pantalla se puede fotografiar, y a un vecino se le puede preguntar.</translation>
    </message>
    <message>
        <source>An older copy of a half-done sitting can be put back in its place.</source>
        <translation>Se puede reponer una copia anterior de una prueba a medio hacer.</translation>
    </message>
    <message>
        <source>A passphrase that is forgotten can&apos;t be got back: nobody else has it.</source>
        <translation>Una frase olvidada no se recupera: nadie más la tiene.</translation>
    </message>
    <message>
        <source>Seal the sitting</source>
        <translation>Sellar la prueba</translation>
    </message>
    <message>
        <source>The proctor types this passphrase to begin, and whenever the sitting has to be left or taken up again. Don&apos;t send it along with the file.</source>
        <translation>Quien vigila escribe esta frase para empezar, y siempre que haya que dejar la prueba o retomarla. No la envíe junto con el archivo.</translation>
    </message>
    <message>
        <source>Passphrase</source>
        <translation>Frase de contraseña</translation>
    </message>
    <message>
        <source>The same again</source>
        <translation>La misma otra vez</translation>
    </message>
    <message>
        <source>Show what is typed</source>
        <translation>Mostrar lo que se escribe</translation>
    </message>
    <message>
        <source>Suggest one</source>
        <translation>Proponer una</translation>
    </message>
    <message>
        <source>Ten syllables drawn by the machine: write them down</source>
        <translation>Diez sílabas sorteadas por el equipo: apúntelas</translation>
    </message>
    <message>
        <source>What the seal does</source>
        <translation>Lo que hace el sello</translation>
    </message>
    <message>
        <source>What it can&apos;t do</source>
        <translation>Lo que no puede hacer</translation>
    </message>
    <message>
        <source>For marks that matter, let it be sat on machines that you look after, with somebody in the room.</source>
        <translation>Si las notas importan, que se haga en equipos a su cargo y con alguien en la sala.</translation>
    </message>
    <message>
        <source>Seal and save...</source>
        <translation>Sellar y guardar...</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>The two are not the same yet.</source>
        <translation>Las dos no son iguales todavía.</translation>
    </message>
    <message>
        <source>Open a sealed sitting</source>
        <translation>Abrir una prueba sellada</translation>
    </message>
    <message>
        <source>{file}

It is opened to be composed further. Type its passphrase.</source>
        <translation>{file}

Se abre para seguir componiéndola. Escriba su frase de contraseña.</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>Opening...</source>
        <translation>Abriendo...</translation>
    </message>
</context>
<context>
    <name>Sealing</name>
    <message>
        <source>This passphrase does not open it</source>
        <translation>Esta frase de contraseña no lo abre</translation>
    </message>
    <message>
        <source>Type it again. Capitals, spaces and accents count. The file itself is whole.</source>
        <translation>Escríbala de nuevo. Cuentan las mayúsculas, los espacios y los acentos. El archivo en sí está entero.</translation>
    </message>
    <message>
        <source>It has been changed since it was sealed</source>
        <translation>Se ha cambiado desde que se selló</translation>
    </message>
    <message>
        <source>A disk, a transfer or a person has changed it, so nothing of it is used. Take another copy.</source>
        <translation>Lo ha cambiado un disco, una transferencia o una persona, así que no se usa nada de él. Tome otra copia.</translation>
    </message>
    <message>
        <source>Its end is missing</source>
        <translation>Le falta el final</translation>
    </message>
    <message>
        <source>It was not copied to the end. Copy it again.</source>
        <translation>No se copió hasta el final. Cópielo de nuevo.</translation>
    </message>
    <message>
        <source>It is from a newer version of this program</source>
        <translation>Es de una versión más nueva de este programa</translation>
    </message>
    <message>
        <source>It has version {version}, and this program knows {known}. Update it.</source>
        <translation>Tiene la versión {version}, y este programa conoce la {known}. Actualícelo.</translation>
    </message>
    <message>
        <source>It is no sealed file of this program</source>
        <translation>No es un archivo sellado de este programa</translation>
    </message>
    <message>
        <source>Sittings end with .sitting, results with .result.</source>
        <translation>Las pruebas terminan en .sitting; los resultados, en .result.</translation>
    </message>
    <message>
        <source>It is a {kind}, not a {asked}</source>
        <translation>Es: {kind}; hace falta: {asked}</translation>
    </message>
    <message>
        <source>Choose another file.</source>
        <translation>Elija otro archivo.</translation>
    </message>
    <message>
        <source>It asks for more work than any file of this program</source>
        <translation>Pide más trabajo que cualquier archivo de este programa</translation>
    </message>
    <message>
        <source>Somebody has made it to keep this machine busy.</source>
        <translation>Alguien lo ha hecho para tener ocupada esta máquina.</translation>
    </message>
    <message>
        <source>It is too large</source>
        <translation>Es demasiado grande</translation>
    </message>
    <message>
        <source>At most {mib} MiB can be read.</source>
        <translation>Se pueden leer como mucho {mib} MiB.</translation>
    </message>
    <message>
        <source>There is too little memory to open it</source>
        <translation>No hay memoria suficiente para abrirlo</translation>
    </message>
    <message>
        <source>Opening takes {mib} MiB. Close other programs.</source>
        <translation>Abrirlo requiere {mib} MiB. Cierre otros programas.</translation>
    </message>
    <message>
        <source>sitting</source>
        <translation>prueba</translation>
    </message>
    <message>
        <source>result</source>
        <translation>resultado</translation>
    </message>
    <message>
        <source>The sitting can&apos;t be written down</source>
        <translation>La prueba no se puede anotar</translation>
    </message>
    <message>
        <source>{path}: {reason}. What was written before is safe. Make room, and do it again; leave the program open.</source>
        <translation>{path}: {reason}. Lo anotado antes está a salvo. Haga sitio y repítalo; deje el programa abierto.</translation>
    </message>
    <message>
        <source>Another window has this sitting</source>
        <translation>Otra ventana tiene esta prueba</translation>
    </message>
    <message>
        <source>Go on there, or close it first.</source>
        <translation>Siga allí, o ciérrela primero.</translation>
    </message>
    <message>
        <source>The sitting&apos;s journal is not there any more</source>
        <translation>El diario de la prueba ya no está</translation>
    </message>
    <message>
        <source>{path}: it was removed, or another file lies in its place.</source>
        <translation>{path}: se ha borrado, o hay otro archivo en su lugar.</translation>
    </message>
</context>
<context>
    <name>SearchField</name>
    <message>
        <source>Search: a limit, a measure, a word, a source</source>
        <translation>Buscar: un límite, una medida, una palabra, una fuente</translation>
    </message>
    <message>
        <source>Search the reference</source>
        <translation>Buscar en la referencia</translation>
    </message>
</context>
<context>
    <name>Server</name>
    <message>
        <source>No server: what is done here stays on this machine.</source>
        <translation>Sin servidor: lo que se hace aquí se queda en este equipo.</translation>
    </message>
    <message>
        <source>Looking what there is to send...</source>
        <translation>Mirando qué hay que enviar...</translation>
    </message>
    <message>
        <source>Nothing here waits to be sent.</source>
        <translation>Aquí no hay nada pendiente de enviar.</translation>
    </message>
    <message>
        <source>The server has all that is here.</source>
        <translation>El servidor tiene todo lo que hay aquí.</translation>
    </message>
    <message>
        <source>Being sent: {what}.</source>
        <translation>Enviándose: {what}.</translation>
    </message>
    <message>
        <source>Waiting here: {what}. Nothing of it is lost.</source>
        <translation>Esperando aquí: {what}. Nada se pierde.</translation>
    </message>
    <message>
        <source>Last acknowledged: {when}.</source>
        <translation>Última confirmación: {when}.</translation>
    </message>
    <message>
        <source>The server is there. This login may send, and read nothing.</source>
        <translation>El servidor está ahí. Este usuario puede enviar, y no leer nada.</translation>
    </message>
    <message>
        <source>The server is there. This login may read, and send nothing.</source>
        <translation>El servidor está ahí. Este usuario puede leer, y no enviar nada.</translation>
    </message>
    <message>
        <source>The server is there. This login may read and erase what everybody did: it is an instructor&apos;s, and not for a machine that learners use.</source>
        <translation>El servidor está ahí. Este usuario puede leer y borrar lo que hicieron todos: es de instructor, y no para un equipo que usen los aprendices.</translation>
    </message>
</context>
<context>
    <name>ServerPanel</name>
    <message>
        <source>What is here and what is there</source>
        <translation>Lo que hay aquí y lo que hay allí</translation>
    </message>
    <message>
        <source>Send now</source>
        <translation>Enviar ahora</translation>
    </message>
    <message>
        <source>Each machine keeps what is done on it, and sends it to the school&apos;s PostgreSQL server when that can be reached. Names are never sent, codes are. Learners without a code stay here.</source>
        <translation>Cada equipo guarda lo que se hace en él y lo envía al servidor PostgreSQL de la escuela cuando puede llegar a él. Los nombres no se envían nunca; los códigos, sí. Los aprendices sin código se quedan aquí.</translation>
    </message>
    <message>
        <source>Address of the server</source>
        <translation>Dirección del servidor</translation>
    </message>
    <message>
        <source>postgresql://station@host/school</source>
        <translation>postgresql://puesto@servidor/escuela</translation>
    </message>
    <message>
        <source>Use it</source>
        <translation>Usarla</translation>
    </message>
    <message>
        <source>Test the connection</source>
        <translation>Probar la conexión</translation>
    </message>
    <message>
        <source>Password</source>
        <translation>Contraseña</translation>
    </message>
    <message>
        <source>unless it is kept already</source>
        <translation>si no está guardada ya</translation>
    </message>
    <message>
        <source>No server any more.</source>
        <translation>Ya no hay servidor.</translation>
    </message>
    <message>
        <source>Kept.</source>
        <translation>Guardado.</translation>
    </message>
    <message>
        <source>It is tried again by itself.</source>
        <translation>Se reintenta solo.</translation>
    </message>
    <message>
        <source>Keep the password?</source>
        <translation>¿Guardar la contraseña?</translation>
    </message>
    <message>
        <source>It is not kept in this program&apos;s settings. It can be kept in the file where PostgreSQL&apos;s own programs look for it, which only you may read:

{file}

Otherwise it holds until the program ends.</source>
        <translation>No se guarda en los ajustes de este programa. Se puede guardar en el archivo donde la buscan los propios programas de PostgreSQL, que solo usted puede leer:

{file}

Si no, vale hasta que termine el programa.</translation>
    </message>
    <message>
        <source>Keep it there</source>
        <translation>Guardarla allí</translation>
    </message>
    <message>
        <source>Don&apos;t keep it</source>
        <translation>No guardarla</translation>
    </message>
    <message>
        <source>Asking the server...</source>
        <translation>Preguntando al servidor...</translation>
    </message>
</context>
<context>
    <name>ShippedMenu</name>
    <message>
        <source>{title} ({n})</source>
        <translation>{title} ({n})</translation>
    </message>
</context>
<context>
    <name>Shop</name>
    <message>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>{name}: less</source>
        <translation>{name}: menos</translation>
    </message>
    <message>
        <source>{name}: more</source>
        <translation>{name}: más</translation>
    </message>
    <message>
        <source>Base undercut</source>
        <translation>Mordedura, base</translation>
    </message>
    <message>
        <source>Upright undercut</source>
        <translation>Mordedura, montante</translation>
    </message>
    <message>
        <source>Base toe angle</source>
        <translation>Ángulo de borde, base</translation>
    </message>
    <message>
        <source>Upright toe angle</source>
        <translation>Ángulo de borde, montante</translation>
    </message>
    <message>
        <source>Legs differ by</source>
        <translation>Diferencia de catetos</translation>
    </message>
    <message>
        <source>Size at the edge</source>
        <translation>Tamaño en el canto</translation>
    </message>
    <message>
        <source>meets</source>
        <translation>cumple</translation>
    </message>
    <message>
        <source>fails</source>
        <translation>no cumple</translation>
    </message>
    <message>
        <source>in doubt</source>
        <translation>en duda</translation>
    </message>
    <message>
        <source>Inside the leaf’s doubt (±{doubt}): learners may call it either way. Too near its limit: {names}.</source>
        <translation>Dentro de la duda de la hoja (±{doubt}): vale cualquiera de los dos dictámenes. Demasiado cerca del límite: {names}.</translation>
    </message>
    <message>
        <source>No leaf of any rack settles this, so it is referred: {names}.</source>
        <translation>Ninguna hoja de ningún estante lo resuelve, así que se remite: {names}.</translation>
    </message>
    <message>
        <source>No leaf of any rack settles it.</source>
        <translation>Ninguna hoja de ningún estante lo resuelve.</translation>
    </message>
    <message>
        <source>read</source>
        <translation>leer</translation>
    </message>
    <message>
        <source>size</source>
        <translation>medir</translation>
    </message>
    <message>
        <source>judge</source>
        <translation>juzgar</translation>
    </message>
    <message>
        <source>find the fault</source>
        <translation>hallar el fallo</translation>
    </message>
    <message>
        <source>Point {n} of the trace</source>
        <translation>Punto {n} del trazo</translation>
    </message>
    <message>
        <source>Spatter {n}: place</source>
        <translation>Salpicadura {n}: lugar</translation>
    </message>
    <message>
        <source>Spatter {n}: height</source>
        <translation>Salpicadura {n}: altura</translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation>Cateto de la base</translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation>Cateto del montante</translation>
    </message>
    <message>
        <source>Crown</source>
        <translation>Abombamiento</translation>
    </message>
    <message>
        <source>Joint angle</source>
        <translation>Ángulo de la junta</translation>
    </message>
    <message>
        <source>Root opening</source>
        <translation>Separación en la raíz</translation>
    </message>
    <message>
        <source>Base undercut: depth</source>
        <translation>Mordedura, base: fondo</translation>
    </message>
    <message>
        <source>Base undercut: width</source>
        <translation>Mordedura, base: ancho</translation>
    </message>
    <message>
        <source>Upright undercut: depth</source>
        <translation>Mordedura, montante: fondo</translation>
    </message>
    <message>
        <source>Upright undercut: width</source>
        <translation>Mordedura, montante: ancho</translation>
    </message>
    <message>
        <source>Base overlap</source>
        <translation>Solape, base</translation>
    </message>
    <message>
        <source>Upright overlap</source>
        <translation>Solape, montante</translation>
    </message>
    <message>
        <source>Base thickness</source>
        <translation>Espesor de la base</translation>
    </message>
    <message>
        <source>Upright thickness</source>
        <translation>Espesor del montante</translation>
    </message>
    <message>
        <source>Base length</source>
        <translation>Longitud de la base</translation>
    </message>
    <message>
        <source>Upright length</source>
        <translation>Longitud del montante</translation>
    </message>
    <message>
        <source>Point {n}</source>
        <translation>Punto {n}</translation>
    </message>
    <message>
        <source>{wrong}; right would be: {right}</source>
        <translation>{wrong}; lo correcto sería: {right}</translation>
    </message>
    <message>
        <source>{knob} stays there: {wrong}.</source>
        <translation>{knob} se queda ahí: {wrong}.</translation>
    </message>
    <message>
        <source>{knob} stays at {value}: beyond, {wrong} (right: {right}).</source>
        <translation>{knob} se queda en {value}: más allá, {wrong} (correcto: {right}).</translation>
    </message>
    <message>
        <source>add a coupon</source>
        <translation>añadir un cupón</translation>
    </message>
    <message>
        <source>delete a coupon</source>
        <translation>borrar un cupón</translation>
    </message>
    <message>
        <source>duplicate a coupon</source>
        <translation>duplicar un cupón</translation>
    </message>
    <message>
        <source>move a coupon</source>
        <translation>mover un cupón</translation>
    </message>
    <message>
        <source>split the tray</source>
        <translation>dividir la bandeja</translation>
    </message>
    <message>
        <source>merge a tray in</source>
        <translation>incorporar una bandeja</translation>
    </message>
    <message>
        <source>coupons from dice</source>
        <translation>cupones a los dados</translation>
    </message>
    <message>
        <source>title of the tray</source>
        <translation>título de la bandeja</translation>
    </message>
    <message>
        <source>the placed leaf</source>
        <translation>la hoja puesta</translation>
    </message>
    <message>
        <source>an entry</source>
        <translation>un dato</translation>
    </message>
    <message>
        <source>a change</source>
        <translation>un cambio</translation>
    </message>
    <message>
        <source>Something has to stand here</source>
        <translation>Aquí tiene que haber algo</translation>
    </message>
    <message>
        <source>This is longer than an entry can be</source>
        <translation>Esto es más largo de lo que puede ser un dato</translation>
    </message>
    <message>
        <source>These brackets are deeper than anyone needs</source>
        <translation>Estos paréntesis son más hondos de lo necesario</translation>
    </message>
    <message>
        <source>Something is missing at the end</source>
        <translation>Falta algo al final</translation>
    </message>
    <message>
        <source>“{found}” can’t stand there</source>
        <translation>«{found}» no puede ir ahí</translation>
    </message>
    <message>
        <source>“{found}” is no unit of this</source>
        <translation>«{found}» no es unidad de esto</translation>
    </message>
    <message>
        <source>A bracket lacks its other half</source>
        <translation>A un paréntesis le falta su pareja</translation>
    </message>
    <message>
        <source>This divides by zero</source>
        <translation>Esto divide por cero</translation>
    </message>
    <message>
        <source>This is beyond all measure</source>
        <translation>Esto se sale de toda medida</translation>
    </message>
    <message>
        <source>A length and a bare number don’t go together so</source>
        <translation>Una longitud y un número sin unidad no van así juntos</translation>
    </message>
    <message>
        <source>A length times a length is an area</source>
        <translation>Una longitud por una longitud es un área</translation>
    </message>
    <message>
        <source>82.5° or 90 − 7.5</source>
        <translation>82,5° o 90 − 7,5</translation>
    </message>
    <message>
        <source>0.25 or 25 %</source>
        <translation>0,25 o 25 %</translation>
    </message>
    <message>
        <source>3</source>
        <translation>3</translation>
    </message>
    <message>
        <source>8 mm, 5/16 in or 5/16 in − 0.3 mm</source>
        <translation>8 mm, 5/16 in o 5/16 in − 0,3 mm</translation>
    </message>
</context>
<context>
    <name>ShopKeys</name>
    <message>
        <source>on a handle: move it 0.1 mm or 1°; with Shift 1 mm, with Ctrl 0.01 mm</source>
        <translation>en un asa: moverla 0,1 mm o 1°; con Mayús 1 mm, con Ctrl 0,01 mm</translation>
    </message>
    <message>
        <source>Ins  Del</source>
        <translation>Ins  Supr</translation>
    </message>
    <message>
        <source>on a point of a traced face: a point more; this one away</source>
        <translation>en un punto de una cara trazada: un punto más; quitar este</translation>
    </message>
    <message>
        <source>PgUp  PgDn</source>
        <translation>RePág  AvPág</translation>
    </message>
    <message>
        <source>there: the point before, the next; else the coupons</source>
        <translation>ahí: el punto anterior, el siguiente; si no, los cupones</translation>
    </message>
    <message>
        <source>look closer, look farther, see all of it</source>
        <translation>mirar más cerca, más lejos, verlo todo</translation>
    </message>
    <message>
        <source>draw legs, inscribed triangle, throats</source>
        <translation>dibujar catetos, triángulo inscrito, gargantas</translation>
    </message>
    <message>
        <source>the photo behind the section, if there is one</source>
        <translation>la foto detrás de la sección, si la hay</translation>
    </message>
    <message>
        <source>go on to the next panel; with Shift back</source>
        <translation>pasar al panel siguiente; con Mayús, al anterior</translation>
    </message>
    <message>
        <source>Alt+↑  Alt+↓</source>
        <translation>Alt+↑  Alt+↓</translation>
    </message>
    <message>
        <source>in the list: move the coupon up or down</source>
        <translation>en la lista: subir o bajar el cupón</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Supr</translation>
    </message>
    <message>
        <source>in the list: delete the coupon</source>
        <translation>en la lista: borrar el cupón</translation>
    </message>
    <message>
        <source>Ctrl+D</source>
        <translation>Ctrl+D</translation>
    </message>
    <message>
        <source>duplicate the coupon</source>
        <translation>duplicar el cupón</translation>
    </message>
    <message>
        <source>Ctrl+S</source>
        <translation>Ctrl+S</translation>
    </message>
    <message>
        <source>save the tray; with Shift under another name</source>
        <translation>guardar la bandeja; con Mayús con otro nombre</translation>
    </message>
    <message>
        <source>Ctrl+Z</source>
        <translation>Ctrl+Z</translation>
    </message>
    <message>
        <source>undo; with Shift do again</source>
        <translation>deshacer; con Mayús rehacer</translation>
    </message>
    <message>
        <source>Ctrl+Y</source>
        <translation>Ctrl+Y</translation>
    </message>
    <message>
        <source>do again</source>
        <translation>rehacer</translation>
    </message>
    <message>
        <source>Ctrl+B</source>
        <translation>Ctrl+B</translation>
    </message>
    <message>
        <source>try the coupon on the bench</source>
        <translation>probar el cupón en el banco</translation>
    </message>
    <message>
        <source>The section</source>
        <translation>La sección</translation>
    </message>
    <message>
        <source>The tray</source>
        <translation>La bandeja</translation>
    </message>
</context>
<context>
    <name>ShopScreen</name>
    <message>
        <source>Coupon shop</source>
        <translation>Taller de cupones</translation>
    </message>
    <message>
        <source>Another coupon of this tray has this id; right would be one of its own</source>
        <translation>Otro cupón de esta bandeja tiene este identificador; lo correcto sería uno propio</translation>
    </message>
</context>
<context>
    <name>ShutPapers</name>
    <message>
        <source>Open papers that are shut</source>
        <translation>Abrir exámenes cerrados</translation>
    </message>
    <message>
        <source>Type the passphrase that their sitting was sealed with. Papers of a sitting with another passphrase stay shut.</source>
        <translation>Escriba la frase de contraseña con la que se selló su prueba. Los exámenes de una prueba con otra frase siguen cerrados.</translation>
    </message>
    <message>
        <source>This passphrase opens none of them. Type it again: capitals, spaces and accents count.</source>
        <translation>Esta frase de contraseña no abre ninguno. Escríbala otra vez: cuentan las mayúsculas, los espacios y los acentos.</translation>
    </message>
</context>
<context>
    <name>ShutStrip</name>
    <message>
        <source>Open with the passphrase...</source>
        <translation>Abrir con la frase de contraseña...</translation>
    </message>
    <message numerus="yes">
        <source>Shut: %n paper(s) handed in at this machine, so that whoever sits here next can&apos;t look up the right calls. The passphrase shows them until the program is closed or the next sitting begins.</source>
        <translation>
            <numerusform>Cerrado: %n examen entregado en este equipo, para que quien se siente después no pueda consultar los dictámenes correctos. La frase de contraseña lo muestra hasta que se cierre el programa o empiece la próxima prueba.</numerusform>
            <numerusform>Cerrados: %n exámenes entregados en este equipo, para que quien se siente después no pueda consultar los dictámenes correctos. La frase de contraseña los muestra hasta que se cierre el programa o empiece la próxima prueba.</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>Side</name>
    <message>
        <source>Weld</source>
        <translation>Cordón</translation>
    </message>
    <message>
        <source>Drawing, rules</source>
        <translation>Plano, reglas</translation>
    </message>
    <message>
        <source>Task, words</source>
        <translation>Tarea, textos</translation>
    </message>
    <message>
        <source>Checks</source>
        <translation>Controles</translation>
    </message>
    <message>
        <source>Leaves</source>
        <translation>Hojas</translation>
    </message>
    <message>
        <source>What each leaf would show</source>
        <translation>Qué mostraría cada hoja</translation>
    </message>
    <message>
        <source>Measures</source>
        <translation>Medidas</translation>
    </message>
</context>
<context>
    <name>SieveBar</name>
    <message>
        <source>Sort by</source>
        <translation>Ordenar por</translation>
    </message>
    <message>
        <source>Sort by; a click on a column&apos;s title does the same</source>
        <translation>Ordenar por; un clic en el título de una columna hace lo mismo</translation>
    </message>
    <message>
        <source>As they came</source>
        <translation>Como llegaron</translation>
    </message>
    <message>
        <source>{shown} of {of}</source>
        <translation>{shown} de {of}</translation>
    </message>
    <message>
        <source>all {of}</source>
        <translation>los {of}</translation>
    </message>
    <message>
        <source>Smallest first</source>
        <translation>De menor a mayor</translation>
    </message>
    <message>
        <source>Largest first</source>
        <translation>De mayor a menor</translation>
    </message>
</context>
<context>
    <name>Sitting</name>
    <message>
        <source>answered</source>
        <translation>con respuesta</translation>
    </message>
    <message>
        <source>begun</source>
        <translation>a medias</translation>
    </message>
    <message>
        <source>seen</source>
        <translation>sin responder</translation>
    </message>
    <message>
        <source>not yet seen</source>
        <translation>sin ver</translation>
    </message>
    <message>
        <source>the loupe</source>
        <translation>la lupa</translation>
    </message>
    <message>
        <source>press home</source>
        <translation>arrimar</translation>
    </message>
    <message>
        <source>millimetres or inches, as you like</source>
        <translation>milímetros o pulgadas, a su gusto</translation>
    </message>
    <message>
        <source>{standing}, marked for review</source>
        <translation>{standing}, marcado para revisar</translation>
    </message>
    <message>
        <source>{standing}, on the bench now</source>
        <translation>{standing}, ahora en el banco</translation>
    </message>
    <message>
        <source>Coupon {number}: {standing}</source>
        <translation>Cupón {number}: {standing}</translation>
    </message>
    <message>
        <source>{line}; {flagged} marked for review</source>
        <translation>{line}; {flagged} para revisar</translation>
    </message>
    <message>
        <source>time is up</source>
        <translation>se acabó el tiempo</translation>
    </message>
    <message>
        <source>{minutes} min left</source>
        <translation>quedan {minutes} min</translation>
    </message>
    <message>
        <source>{hours} h {minutes} min left</source>
        <translation>quedan {hours} h {minutes} min</translation>
    </message>
    <message>
        <source>{minutes} min {seconds} s left</source>
        <translation>quedan {minutes} min {seconds} s</translation>
    </message>
    <message>
        <source>{seconds} s left</source>
        <translation>quedan {seconds} s</translation>
    </message>
    <message>
        <source>1 minute left</source>
        <translation>queda 1 minuto</translation>
    </message>
    <message>
        <source>{minutes} minutes left</source>
        <translation>quedan {minutes} minutos</translation>
    </message>
    <message>
        <source>{stop} {left}. This stands in the result.</source>
        <translation>{stop} Ahora {left}. Esto consta en el resultado.</translation>
    </message>
    <message>
        <source>The clock of this machine was set back.</source>
        <translation>El reloj de este equipo se atrasó.</translation>
    </message>
    <message>
        <source>The sitting stood still; how long, its clock can&apos;t tell.</source>
        <translation>La prueba estuvo parada; cuánto, su reloj no puede decirlo.</translation>
    </message>
    <message>
        <source>{minutes} min {seconds} s</source>
        <translation>{minutes} min {seconds} s</translation>
    </message>
    <message>
        <source>{seconds} s</source>
        <translation>{seconds} s</translation>
    </message>
    <message>
        <source>The machine slept for {long}; that is not counted.</source>
        <translation>El equipo estuvo en reposo {long}; eso no se cuenta.</translation>
    </message>
    <message>
        <source>The sitting stood still for {long}; that is not counted.</source>
        <translation>La prueba estuvo parada {long}; eso no se cuenta.</translation>
    </message>
    <message>
        <source>You have {minutes} minutes for {count} coupons, in any order.</source>
        <translation>Tiene {minutes} minutos para {count} cupones, en cualquier orden.</translation>
    </message>
    <message>
        <source>{minutes} minutes of that are your extra time.</source>
        <translation>De ellos, {minutes} minutos son su tiempo adicional.</translation>
    </message>
    <message>
        <source>The clock runs until you hand in. When the time is up the sitting ends by itself, and what you have stated by then counts.</source>
        <translation>El reloj corre hasta que entregue. Cuando se acaba el tiempo la prueba termina sola, y cuenta lo que haya declarado hasta entonces.</translation>
    </message>
    <message>
        <source>Allowed helps: {helps}.</source>
        <translation>Ayudas permitidas: {helps}.</translation>
    </message>
    <message>
        <source>Not allowed: {helps}.</source>
        <translation>No se permite: {helps}.</translation>
    </message>
    <message>
        <source>There are no bench notes, no reference and no debrief. The rules of each coupon can be read on its job card.</source>
        <translation>No hay notas de banco, ni consulta, ni repaso. Las reglas de cada cupón se leen en su ficha de trabajo.</translation>
    </message>
    <message>
        <source>Accepting a weld that clearly fails its rules is critical: one such call fails the whole sitting.</source>
        <translation>Aceptar una soldadura que claramente no cumple sus reglas es crítico: un solo dictamen así suspende toda la prueba.</translation>
    </message>
    <message>
        <source>Accepting a weld that clearly fails its rules is critical: that coupon scores nothing.</source>
        <translation>Aceptar una soldadura que claramente no cumple sus reglas es crítico: ese cupón no puntúa nada.</translation>
    </message>
    <message>
        <source>Every call is kept as you make it, and can be changed until you hand in. A call that is not complete counts as unanswered.</source>
        <translation>Cada dictamen se guarda según lo hace, y puede cambiarse hasta que entregue. Un dictamen incompleto cuenta como sin respuesta.</translation>
    </message>
    <message>
        <source>How the leaf is handled is recorded, and so is every interruption. Only the proctor can let you leave before you hand in.</source>
        <translation>Se registra cómo se maneja la hoja, y también cada interrupción. Solo quien vigila puede dejarle salir antes de entregar.</translation>
    </message>
</context>
<context>
    <name>SittingBar</name>
    <message>
        <source>Coupon before</source>
        <translation>Cupón anterior</translation>
    </message>
    <message>
        <source>Coupon after</source>
        <translation>Cupón siguiente</translation>
    </message>
    <message>
        <source>Mark for review  V</source>
        <translation>Marcar para revisar  V</translation>
    </message>
    <message>
        <source>Mark for review</source>
        <translation>Marcar para revisar</translation>
    </message>
    <message>
        <source>Hand in...</source>
        <translation>Entregar...</translation>
    </message>
    <message>
        <source>Hand in: first a list of what is unanswered  Ctrl+H</source>
        <translation>Entregar: primero una lista de lo que no tiene respuesta  Ctrl+H</translation>
    </message>
    <message>
        <source>Ctrl+H</source>
        <translation>Ctrl+H</translation>
    </message>
    <message>
        <source>More: look, keys, leaving</source>
        <translation>Más: aspecto, teclas, salir</translation>
    </message>
    <message>
        <source>Coupon {number} of {count}</source>
        <translation>Cupón {number} de {count}</translation>
    </message>
    <message>
        <source>Marked for review  V</source>
        <translation>Marcado para revisar  V</translation>
    </message>
</context>
<context>
    <name>SittingCounts</name>
    <message numerus="yes">
        <source>%n coupon(s)</source>
        <translation>
            <numerusform>%n cupón</numerusform>
            <numerusform>%n cupones</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n learner(s)</source>
        <translation>
            <numerusform>%n aprendiz</numerusform>
            <numerusform>%n aprendices</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>and %n more</source>
        <translation>
            <numerusform>y %n más</numerusform>
            <numerusform>y %n más</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n thing(s) to put right; nobody is added before that:</source>
        <translation>
            <numerusform>Hay %n cosa que corregir; antes no se añade a nadie:</numerusform>
            <numerusform>Hay %n cosas que corregir; antes no se añade a nadie:</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n call(s)</source>
        <translation>
            <numerusform>%n dictamen</numerusform>
            <numerusform>%n dictámenes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n answer(s)</source>
        <translation>
            <numerusform>%n respuesta</numerusform>
            <numerusform>%n respuestas</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n paper(s)</source>
        <translation>
            <numerusform>%n examen</numerusform>
            <numerusform>%n exámenes</numerusform>
        </translation>
    </message>
    <message numerus="yes">
        <source>%n mark(s) set by hand</source>
        <translation>
            <numerusform>%n nota puesta a mano</numerusform>
            <numerusform>%n notas puestas a mano</numerusform>
        </translation>
    </message>
</context>
<context>
    <name>SittingFiling</name>
    <message>
        <source>The sitting is not sealed yet</source>
        <translation>La prueba aún no está sellada</translation>
    </message>
    <message>
        <source>What is composed is kept in memory alone: on the disk it would lie open. If the program is closed now, it is gone.</source>
        <translation>Lo que se compone se guarda solo en la memoria: en el disco quedaría abierto. Si el programa se cierra ahora, se pierde.</translation>
    </message>
    <message>
        <source>Seal and save...</source>
        <translation>Sellar y guardar...</translation>
    </message>
    <message>
        <source>Close without it</source>
        <translation>Cerrar sin ella</translation>
    </message>
    <message>
        <source>Go on composing</source>
        <translation>Seguir componiendo</translation>
    </message>
    <message>
        <source>Seal what is composed first?</source>
        <translation>¿Sellar antes lo que se compone?</translation>
    </message>
    <message>
        <source>It is in memory alone, and would be gone.</source>
        <translation>Está solo en la memoria y se perdería.</translation>
    </message>
    <message>
        <source>Give it up</source>
        <translation>Renunciar a ello</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
    <message>
        <source>Open a sitting</source>
        <translation>Abrir una prueba</translation>
    </message>
    <message>
        <source>Sittings (*{suffix});;All files (*)</source>
        <translation>Pruebas (*{suffix});;Todos los archivos (*)</translation>
    </message>
    <message>
        <source>It can&apos;t be opened</source>
        <translation>No se puede abrir</translation>
    </message>
    <message>
        <source>This sitting can&apos;t be opened</source>
        <translation>Esta prueba no se puede abrir</translation>
    </message>
    <message>
        <source>{file}

What is composed stays as it was.</source>
        <translation>{file}

Lo que se compone queda como estaba.</translation>
    </message>
    <message>
        <source>It can&apos;t be sealed yet: see what is missing.</source>
        <translation>Aún no se puede sellar: vea qué falta.</translation>
    </message>
    <message>
        <source>It asks or marks something else than the file that was sealed before: so it becomes another sitting, and results of the earlier one are not counted with it.</source>
        <translation>Pregunta o califica otra cosa que el archivo sellado antes: por eso pasa a ser otra prueba, y los resultados de la anterior no se cuentan con ella.</translation>
    </message>
    <message>
        <source>sitting</source>
        <translation>prueba</translation>
    </message>
    <message>
        <source>Save the sealed sitting</source>
        <translation>Guardar la prueba sellada</translation>
    </message>
    <message>
        <source>Sittings (*{suffix})</source>
        <translation>Pruebas (*{suffix})</translation>
    </message>
    <message>
        <source>Sealed: {file}</source>
        <translation>Sellada: {file}</translation>
    </message>
    <message>
        <source>The sitting could not be saved</source>
        <translation>La prueba no se pudo guardar</translation>
    </message>
    <message>
        <source>{file}

The system says: {reason}. Whatever was there is as it was, and what is composed is not lost.</source>
        <translation>{file}

El sistema dice: {reason}. Lo que hubiera allí está como estaba, y lo que se compone no se ha perdido.</translation>
    </message>
    <message>
        <source>Save it elsewhere...</source>
        <translation>Guardarla en otro sitio...</translation>
    </message>
    <message>
        <source>This sitting is not there</source>
        <translation>Esta prueba no está</translation>
    </message>
    <message>
        <source>{file}

It may have been moved or renamed, or its disk is not connected.</source>
        <translation>{file}

Puede que se haya movido o renombrado, o que su disco no esté conectado.</translation>
    </message>
</context>
<context>
    <name>SittingKeys</name>
    <message>
        <source>Ctrl+PgUp  Ctrl+PgDn</source>
        <translation>Ctrl+RePág  Ctrl+AvPág</translation>
    </message>
    <message>
        <source>the page before, the next</source>
        <translation>la página anterior, la siguiente</translation>
    </message>
    <message>
        <source>Pages</source>
        <translation>Páginas</translation>
    </message>
    <message>
        <source>begin a new one</source>
        <translation>empezar una nueva</translation>
    </message>
    <message>
        <source>open a sealed one</source>
        <translation>abrir una sellada</translation>
    </message>
    <message>
        <source>seal again; with Shift: another passphrase or file</source>
        <translation>sellar de nuevo; con Mayús: otra frase u otro archivo</translation>
    </message>
    <message>
        <source>undo a step; redo it</source>
        <translation>deshacer un paso; rehacerlo</translation>
    </message>
    <message>
        <source>try the paper that is shown, on no record</source>
        <translation>probar el examen que se muestra, sin que conste</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>in a list: tick what is chosen, or untick it</source>
        <translation>en una lista: marcar lo elegido, o desmarcarlo</translation>
    </message>
    <message>
        <source>coupons from a tray&apos;s file; from dice</source>
        <translation>cupones del archivo de una bandeja; a los dados</translation>
    </message>
    <message>
        <source>Ins</source>
        <translation>Ins</translation>
    </message>
    <message>
        <source>add a learner</source>
        <translation>añadir un aprendiz</translation>
    </message>
    <message>
        <source>add many, out of what was copied</source>
        <translation>añadir varios, de lo copiado</translation>
    </message>
    <message>
        <source>change the learner that is chosen</source>
        <translation>cambiar el aprendiz elegido</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Supr</translation>
    </message>
    <message>
        <source>erase those who are chosen; that is asked first</source>
        <translation>borrar a los elegidos; antes se pregunta</translation>
    </message>
    <message>
        <source>find a name or a code</source>
        <translation>buscar un nombre o un código</translation>
    </message>
    <message>
        <source>Learners</source>
        <translation>Aprendices</translation>
    </message>
    <message>
        <source>take the chosen part out</source>
        <translation>sacar la parte elegida</translation>
    </message>
    <message>
        <source>to the coupons, a paper, time and marks, the learners</source>
        <translation>a los cupones, a un examen, al tiempo y las notas, a los aprendices</translation>
    </message>
    <message>
        <source>The sitting</source>
        <translation>La prueba</translation>
    </message>
    <message>
        <source>Its parts</source>
        <translation>Sus partes</translation>
    </message>
</context>
<context>
    <name>SittingView</name>
    <message>
        <source>A sitting</source>
        <translation>Una prueba</translation>
    </message>
    <message>
        <source>&amp;Full screen	F11</source>
        <translation>&amp;Pantalla completa	F11</translation>
    </message>
    <message>
        <source>&amp;Keys...	F1</source>
        <translation>&amp;Teclas...	F1</translation>
    </message>
    <message>
        <source>&amp;Leave the sitting...	Ctrl+Q</source>
        <translation>&amp;Dejar la prueba...	Ctrl+Q</translation>
    </message>
</context>
<context>
    <name>Sittings</name>
    <message>
        <source>{n} min</source>
        <translation>{n} min</translation>
    </message>
    <message>
        <source>{n} %</source>
        <translation>{n} %</translation>
    </message>
    <message>
        <source>Face</source>
        <translation>Cara</translation>
    </message>
    <message>
        <source>Leaf</source>
        <translation>Hoja</translation>
    </message>
    <message>
        <source>Edge</source>
        <translation>Canto</translation>
    </message>
    <message>
        <source>Seat</source>
        <translation>Asiento</translation>
    </message>
    <message>
        <source>Both legs</source>
        <translation>Ambos catetos</translation>
    </message>
    <message>
        <source>Reading</source>
        <translation>Lectura</translation>
    </message>
    <message>
        <source>Disposition</source>
        <translation>Disposición</translation>
    </message>
    <message>
        <source>Loupe</source>
        <translation>Lupa</translation>
    </message>
    <message>
        <source>Press home</source>
        <translation>Arrimar</translation>
    </message>
    <message>
        <source>Switching units</source>
        <translation>Cambiar de unidad</translation>
    </message>
    <message>
        <source>the round magnifier on the leaf&apos;s tip</source>
        <translation>el cristal redondo sobre la punta de la hoja</translation>
    </message>
    <message>
        <source>pushing the leaf into the corner in one go</source>
        <translation>empujar la hoja al rincón de una vez</translation>
    </message>
    <message>
        <source>lengths in the unit one likes, not the drawing&apos;s</source>
        <translation>longitudes en la unidad que uno prefiera, no en la del plano</translation>
    </message>
    <message>
        <source>{coupons}, each learner their own</source>
        <translation>{coupons}, propios de cada cual</translation>
    </message>
    <message>
        <source>From dice</source>
        <translation>A los dados</translation>
    </message>
    <message>
        <source>A tray without a title</source>
        <translation>Una bandeja sin título</translation>
    </message>
    <message>
        <source>all {coupons}</source>
        <translation>todos: {coupons}</translation>
    </message>
    <message>
        <source>{n} of {coupons}</source>
        <translation>{n} de {coupons}</translation>
    </message>
    <message>
        <source>plain to see</source>
        <translation>clara a la vista</translation>
    </message>
    <message>
        <source>middling</source>
        <translation>media</translation>
    </message>
    <message>
        <source>hard</source>
        <translation>difícil</translation>
    </message>
    <message>
        <source>{least} to {most} times what a leaf can tell</source>
        <translation>de {least} a {most} veces lo que distingue una hoja</translation>
    </message>
    <message>
        <source>inside the doubt {n}</source>
        <translation>dentro de la duda {n}</translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguna</translation>
    </message>
    <message>
        <source>How many</source>
        <translation>Cuántos</translation>
    </message>
    <message>
        <source>Right calls</source>
        <translation>Dictámenes correctos</translation>
    </message>
    <message>
        <source>Faces</source>
        <translation>Caras</translation>
    </message>
    <message>
        <source>Traps</source>
        <translation>Trampas</translation>
    </message>
    <message>
        <source>Difficulty</source>
        <translation>Dificultad</translation>
    </message>
    <message>
        <source>Sizes by leg</source>
        <translation>Tamaños por cateto</translation>
    </message>
    <message>
        <source>{low} to {high}</source>
        <translation>de {low} a {high}</translation>
    </message>
    <message>
        <source>Rules</source>
        <translation>Reglas</translation>
    </message>
    <message>
        <source>no leaf</source>
        <translation>ninguna hoja</translation>
    </message>
    <message>
        <source>What the leaf shows</source>
        <translation>Lo que muestra la hoja</translation>
    </message>
    <message>
        <source>{call} (in doubt)</source>
        <translation>{call} (en duda)</translation>
    </message>
    <message>
        <source>{coupons} in {time}: {each} for each</source>
        <translation>{coupons} en {time}: {each} para cada uno</translation>
    </message>
    <message>
        <source>in doubt {n}</source>
        <translation>en duda {n}</translation>
    </message>
    <message>
        <source>Right calls: {answers}</source>
        <translation>Dictámenes correctos: {answers}</translation>
    </message>
    <message>
        <source>Faces: {faces}</source>
        <translation>Caras: {faces}</translation>
    </message>
    <message>
        <source>coupons from a tray</source>
        <translation>cupones de una bandeja</translation>
    </message>
    <message>
        <source>coupons from dice</source>
        <translation>cupones a los dados</translation>
    </message>
    <message>
        <source>a part taken out</source>
        <translation>una parte sacada</translation>
    </message>
    <message>
        <source>a part moved</source>
        <translation>una parte movida</translation>
    </message>
    <message>
        <source>other coupons</source>
        <translation>otros cupones</translation>
    </message>
    <message>
        <source>another recipe</source>
        <translation>otra receta</translation>
    </message>
    <message>
        <source>the title</source>
        <translation>el título</translation>
    </message>
    <message>
        <source>the order</source>
        <translation>el orden</translation>
    </message>
    <message>
        <source>the time</source>
        <translation>el tiempo</translation>
    </message>
    <message>
        <source>a pass mark</source>
        <translation>una nota para aprobar</translation>
    </message>
    <message>
        <source>critical calls</source>
        <translation>dictámenes críticos</translation>
    </message>
    <message>
        <source>a help</source>
        <translation>una ayuda</translation>
    </message>
    <message>
        <source>who sits</source>
        <translation>quién la hace</translation>
    </message>
    <message>
        <source>extra time</source>
        <translation>más tiempo</translation>
    </message>
    <message>
        <source>other papers</source>
        <translation>otros exámenes</translation>
    </message>
    <message>
        <source>sealed as another sitting</source>
        <translation>sellada como otra prueba</translation>
    </message>
</context>
<context>
    <name>SittingsScreen</name>
    <message>
        <source>Sittings</source>
        <translation>Pruebas</translation>
    </message>
    <message>
        <source>Pages of the sittings</source>
        <translation>Páginas de las pruebas</translation>
    </message>
    <message>
        <source>Compose</source>
        <translation>Componer</translation>
    </message>
    <message>
        <source>Put a sitting together and seal it</source>
        <translation>Componer una prueba y sellarla</translation>
    </message>
    <message>
        <source>Take</source>
        <translation>Hacer</translation>
    </message>
    <message>
        <source>Sit a sealed sitting on this machine</source>
        <translation>Hacer una prueba sellada en este equipo</translation>
    </message>
    <message>
        <source>Class</source>
        <translation>Clase</translation>
    </message>
    <message>
        <source>Learners, groups, and the school&apos;s server</source>
        <translation>Aprendices, grupos y el servidor de la escuela</translation>
    </message>
    <message>
        <source>Results</source>
        <translation>Resultados</translation>
    </message>
    <message>
        <source>What was handed in, and who is ready</source>
        <translation>Lo entregado, y quién está listo</translation>
    </message>
</context>
<context>
    <name>SizeChoices</name>
    <message>
        <source>Largest leaf met; M: the one in hand</source>
        <translation>Mayor hoja cumplida; M: la que está en mano</translation>
    </message>
    <message>
        <source>Largest leaf that the weld meets</source>
        <translation>La mayor hoja que el cordón cumple</translation>
    </message>
</context>
<context>
    <name>Slips</name>
    <message>
        <source>Code slips</source>
        <translation>Papeletas con códigos</translation>
    </message>
    <message>
        <source>Type this code when the sitting begins.</source>
        <translation>Escriba este código cuando empiece la prueba.</translation>
    </message>
</context>
<context>
    <name>Spoken</name>
    <message>
        <source>Section</source>
        <translation>Sección</translation>
    </message>
    <message>
        <source>Leaf {mark}, {edge}</source>
        <translation>Hoja {mark}, {edge}</translation>
    </message>
    <message>
        <source>Tip</source>
        <translation>Punta</translation>
    </message>
    <message>
        <source>Spur</source>
        <translation>Espolón</translation>
    </message>
    <message>
        <source>bead</source>
        <translation>cordón</translation>
    </message>
    <message>
        <source>long edge at about {angle}°</source>
        <translation>canto largo a unos {angle}°</translation>
    </message>
    <message>
        <source>corner {where}, {angle}</source>
        <translation>esquina {where}, {angle}</translation>
    </message>
    <message>
        <source>turned over</source>
        <translation>volteada</translation>
    </message>
    <message>
        <source>not turned over</source>
        <translation>sin voltear</translation>
    </message>
    <message>
        <source>corner {where}, {angle}, {side}</source>
        <translation>esquina {where}, {angle}, {side}</translation>
    </message>
    <message>
        <source>about {across} right and {along} up from the root</source>
        <translation>a unos {across} a la derecha y {along} por encima de la raíz</translation>
    </message>
    <message>
        <source>about {across} right and {along} down from the root</source>
        <translation>a unos {across} a la derecha y {along} por debajo de la raíz</translation>
    </message>
    <message>
        <source>about {across} left and {along} up from the root</source>
        <translation>a unos {across} a la izquierda y {along} por encima de la raíz</translation>
    </message>
    <message>
        <source>about {across} left and {along} down from the root</source>
        <translation>a unos {across} a la izquierda y {along} por debajo de la raíz</translation>
    </message>
    <message>
        <source>No leaf in hand</source>
        <translation>Ninguna hoja en la mano</translation>
    </message>
    <message>
        <source>{leaf}: {contacts}</source>
        <translation>{leaf}: {contacts}</translation>
    </message>
    <message>
        <source>throat</source>
        <translation>garganta</translation>
    </message>
    <message>
        <source>{mark}, {edge}, {leg}: {shown}</source>
        <translation>{mark}, {edge}, {leg}: {shown}</translation>
    </message>
    <message>
        <source>On record, {score} of 100.</source>
        <translation>Registrado, {score} de 100.</translation>
    </message>
</context>
<context>
    <name>Stating</name>
    <message>
        <source>Take a leaf off the rack first.</source>
        <translation>Primero tome una hoja del estante.</translation>
    </message>
    <message>
        <source>In mid-air: the leaf touches nothing. Your earlier reading there stands; take back either on the job card.</source>
        <translation>En el aire: la hoja no toca nada. Su lectura anterior ahí sigue en pie; retire una de las dos en la ficha.</translation>
    </message>
    <message>
        <source>In mid-air: the leaf touches nothing.</source>
        <translation>En el aire: la hoja no toca nada.</translation>
    </message>
</context>
<context>
    <name>StepPanel</name>
    <message>
        <source>Move the leaf</source>
        <translation>Mover la hoja</translation>
    </message>
</context>
<context>
    <name>Steps</name>
    <message>
        <source>Turn left</source>
        <translation>Girar a la izquierda</translation>
    </message>
    <message>
        <source>Move up</source>
        <translation>Subir</translation>
    </message>
    <message>
        <source>Turn right</source>
        <translation>Girar a la derecha</translation>
    </message>
    <message>
        <source>Move left</source>
        <translation>A la izquierda</translation>
    </message>
    <message>
        <source>Move down</source>
        <translation>Bajar</translation>
    </message>
    <message>
        <source>Move right</source>
        <translation>A la derecha</translation>
    </message>
    <message>
        <source>Press home</source>
        <translation>Arrimar</translation>
    </message>
    <message>
        <source>Space</source>
        <translation>Espacio</translation>
    </message>
    <message>
        <source>Turn over</source>
        <translation>Voltear</translation>
    </message>
    <message>
        <source>Swap ends</source>
        <translation>Otro extremo</translation>
    </message>
    <message>
        <source>Clean toes</source>
        <translation>Limpiar</translation>
    </message>
    <message>
        <source>Put back</source>
        <translation>Devolver</translation>
    </message>
    <message>
        <source>Esc</source>
        <translation>Esc</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
</context>
<context>
    <name>StrayCue</name>
    <message>
        <source>Leaf {mark} lies to the left: bring it back</source>
        <translation>La hoja {mark} está a la izquierda: traerla</translation>
    </message>
    <message>
        <source>Leaf {mark} lies to the right: bring it back</source>
        <translation>La hoja {mark} está a la derecha: traerla</translation>
    </message>
    <message>
        <source>Leaf {mark} lies above: bring it back</source>
        <translation>La hoja {mark} está arriba: traerla</translation>
    </message>
    <message>
        <source>Leaf {mark} lies below: bring it back</source>
        <translation>La hoja {mark} está abajo: traerla</translation>
    </message>
    <message>
        <source>Or click the leaf on the rack again</source>
        <translation>O haga clic otra vez en la hoja del estante</translation>
    </message>
</context>
<context>
    <name>SymbolMenu</name>
    <message>
        <source>&amp;Weld symbols</source>
        <translation>Símbolos de sol&amp;dadura</translation>
    </message>
    <message>
        <source>As the drawing&apos;s unit suggests</source>
        <translation>Según la unidad del plano</translation>
    </message>
</context>
<context>
    <name>Symbols</name>
    <message>
        <source>AWS A2.4</source>
        <translation>AWS A2.4</translation>
    </message>
    <message>
        <source>ISO 2553, system A</source>
        <translation>ISO 2553, sistema A</translation>
    </message>
    <message>
        <source>ISO 2553, system B</source>
        <translation>ISO 2553, sistema B</translation>
    </message>
    <message>
        <source>{size} throat</source>
        <translation>garganta de {size}</translation>
    </message>
    <message>
        <source>{base} leg on the base, {upright} on the upright</source>
        <translation>cateto de {base} en la base, {upright} en el montante</translation>
    </message>
    <message>
        <source>{size} leg, both members</source>
        <translation>cateto de {size}, ambas piezas</translation>
    </message>
    <message>
        <source>pieces {length} long, {pitch} centre to centre ({gap} clear)</source>
        <translation>tramos de {length}, {pitch} entre centros ({gap} libres)</translation>
    </message>
    <message>
        <source>{count} pieces {length} long, {pitch} centre to centre ({gap} clear)</source>
        <translation>{count} tramos de {length}, {pitch} entre centros ({gap} libres)</translation>
    </message>
    <message>
        <source>staggered</source>
        <translation>al tresbolillo</translation>
    </message>
    <message>
        <source>arrow side</source>
        <translation>lado de la flecha</translation>
    </message>
    <message>
        <source>other side</source>
        <translation>lado opuesto</translation>
    </message>
    <message>
        <source>both sides</source>
        <translation>ambos lados</translation>
    </message>
    <message>
        <source>all around</source>
        <translation>todo alrededor</translation>
    </message>
    <message>
        <source>weld on site</source>
        <translation>soldar en obra</translation>
    </message>
    <message>
        <source>Weld symbol, {standard}: fillet, {asked}; {marks}</source>
        <translation>Símbolo de soldadura, {standard}: filete, {asked}; {marks}</translation>
    </message>
</context>
<context>
    <name>Tabled</name>
    <message>
        <source>Copy</source>
        <translation>Copiar</translation>
    </message>
    <message>
        <source>Copy the chosen rows, or all that are shown, for a spreadsheet  Ctrl+C</source>
        <translation>Copiar las filas elegidas, o todas las que se ven, para una hoja de cálculo  Ctrl+C</translation>
    </message>
    <message>
        <source>{title}: {means}</source>
        <translation>{title}: {means}</translation>
    </message>
</context>
<context>
    <name>Taking</name>
    <message>
        <source>A disk or a person has changed its journal. Until {when} it is whole; calls made after that are lost.

There, {answered} of {count} coupons are answered. The time after it is given again, and the gap stands in the result. The damaged journal is kept beside it, in {folder}.</source>
        <translation>Un disco o una persona ha cambiado su diario. Hasta {when} está íntegro; los dictámenes posteriores se han perdido.

En esa parte hay {answered} de {count} cupones respondidos. El tiempo posterior se vuelve a dar, y la interrupción consta en el resultado. El diario dañado se conserva a su lado, en {folder}.</translation>
    </message>
    <message>
        <source>Go on from there</source>
        <translation>Seguir desde ahí</translation>
    </message>
    <message>
        <source>Leave it as it is</source>
        <translation>Dejarla como está</translation>
    </message>
    <message>
        <source>This sitting is damaged</source>
        <translation>Esta prueba está dañada</translation>
    </message>
</context>
<context>
    <name>TakingKeys</name>
    <message>
        <source>PgUp  PgDn</source>
        <translation>RePág  AvPág</translation>
    </message>
    <message>
        <source>the coupon before or after</source>
        <translation>el cupón anterior o siguiente</translation>
    </message>
    <message>
        <source>Enter</source>
        <translation>Intro</translation>
    </message>
    <message>
        <source>keep the call, and on to the next coupon</source>
        <translation>guardar el dictamen y pasar al cupón siguiente</translation>
    </message>
    <message>
        <source>mark the coupon for review, or no more</source>
        <translation>marcar el cupón para revisar, o ya no</translation>
    </message>
    <message>
        <source>to the map of coupons; arrows and Enter go to one</source>
        <translation>al mapa de cupones; flechas e Intro llevan a uno</translation>
    </message>
    <message>
        <source>hide the time, or show it again</source>
        <translation>ocultar el tiempo, o volver a mostrarlo</translation>
    </message>
    <message>
        <source>Ctrl+H</source>
        <translation>Ctrl+H</translation>
    </message>
    <message>
        <source>hand in: first a list of what is unanswered</source>
        <translation>entregar: primero una lista de lo que no tiene respuesta</translation>
    </message>
    <message>
        <source>the whole screen, or the window again</source>
        <translation>la pantalla entera, o de nuevo la ventana</translation>
    </message>
    <message>
        <source>F1</source>
        <translation>F1</translation>
    </message>
    <message>
        <source>all keys</source>
        <translation>todas las teclas</translation>
    </message>
    <message>
        <source>Ctrl+Q</source>
        <translation>Ctrl+Q</translation>
    </message>
    <message>
        <source>leave the sitting: needs the proctor</source>
        <translation>dejar la prueba: hace falta quien vigila</translation>
    </message>
    <message>
        <source>A sitting</source>
        <translation>Una prueba</translation>
    </message>
</context>
<context>
    <name>TakingPage</name>
    <message>
        <source>Take a sitting</source>
        <translation>Hacer una prueba</translation>
    </message>
    <message>
        <source>A sitting</source>
        <translation>Una prueba</translation>
    </message>
    <message>
        <source>The proctor&apos;s passphrase</source>
        <translation>La frase de quien vigila</translation>
    </message>
    <message>
        <source>Open</source>
        <translation>Abrir</translation>
    </message>
    <message>
        <source>The learner&apos;s code</source>
        <translation>El código del aprendiz</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Seguir</translation>
    </message>
    <message>
        <source>{name} is a tray to practise with, not a sitting. A sitting is made of trays on the page Compose.</source>
        <translation>{name} es una bandeja para practicar, no una prueba. Las pruebas se hacen de bandejas en la página Componer.</translation>
    </message>
    <message>
        <source>Your instructor gave you a code. It stands in the result; no name does.</source>
        <translation>Su instructor le dio un código. Figura en el resultado; ningún nombre figura.</translation>
    </message>
    <message>
        <source>Go on with a sitting</source>
        <translation>Seguir con una prueba</translation>
    </message>
    <message>
        <source>The proctor&apos;s passphrase opens it again, at the coupon where it was. The clock runs from then on; the time in between is not counted, and stands in the result.</source>
        <translation>La frase de quien vigila la abre de nuevo, en el cupón donde estaba. El reloj corre desde entonces; el tiempo de en medio no se cuenta, y consta en el resultado.</translation>
    </message>
    <message>
        <source>The proctor types the passphrase that this sitting was sealed with.</source>
        <translation>Quien vigila escribe la frase con la que se selló esta prueba.</translation>
    </message>
    <message>
        <source>Opening…</source>
        <translation>Abriendo…</translation>
    </message>
    <message>
        <source>Open it on the bench</source>
        <translation>Abrirla en el banco</translation>
    </message>
    <message>
        <source>Choose a sitting</source>
        <translation>Elegir una prueba</translation>
    </message>
    <message>
        <source>Sittings (*{suffix});;All files (*)</source>
        <translation>Pruebas (*{suffix});;Todos los archivos (*)</translation>
    </message>
    <message>
        <source>Type the passphrase first.</source>
        <translation>Escriba primero la frase.</translation>
    </message>
    <message>
        <source>What was sealed is no sitting that can be sat. Its instructor sees why on the page Compose.</source>
        <translation>Lo que se selló no es una prueba que pueda hacerse. Su instructor ve por qué en la página Componer.</translation>
    </message>
    <message>
        <source>Another version of this program began it, and would lay out another paper. Go on with that version.</source>
        <translation>La empezó otra versión de este programa, y esta daría otro examen. Siga con aquella versión.</translation>
    </message>
    <message>
        <source>Type your code first.</source>
        <translation>Escriba primero su código.</translation>
    </message>
    <message>
        <source>That can&apos;t be a code: it has signs that can&apos;t be seen.</source>
        <translation>Eso no puede ser un código: tiene signos que no se ven.</translation>
    </message>
    <message>
        <source>A sign of it is wrong: see how it was given to you.</source>
        <translation>Hay un signo mal: vea cómo se lo dieron.</translation>
    </message>
    <message>
        <source>This code is not on the list of this sitting.</source>
        <translation>Este código no está en la lista de esta prueba.</translation>
    </message>
    <message>
        <source>This code has begun this sitting here, from a file that was sealed differently. Go on with that one from the first page, with its passphrase.</source>
        <translation>Este código empezó aquí esta prueba, con un archivo sellado de otro modo. Siga con aquella desde la primera página, con su frase.</translation>
    </message>
    <message>
        <source>This code has handed in a sitting of this title at this machine before. If it is sat again, both results are kept, and the instructor is told.</source>
        <translation>Este código ya entregó en este equipo una prueba con este título. Si la hace otra vez, se guardan los dos resultados, y se le dice al instructor.</translation>
    </message>
    <message>
        <source>It could not be read back.</source>
        <translation>No pudo leerse de nuevo.</translation>
    </message>
    <message>
        <source>Save a copy of the sealed result</source>
        <translation>Guardar una copia del resultado sellado</translation>
    </message>
    <message>
        <source>Results (*{suffix})</source>
        <translation>Resultados (*{suffix})</translation>
    </message>
    <message>
        <source>The copy could not be saved</source>
        <translation>No se pudo guardar la copia</translation>
    </message>
    <message>
        <source>{file}: {reason}

The result itself is safe.</source>
        <translation>{file}: {reason}

El resultado mismo está a salvo.</translation>
    </message>
    <message>
        <source>A copy was saved as {file}</source>
        <translation>Se guardó una copia como {file}</translation>
    </message>
</context>
<context>
    <name>Talk</name>
    <message>
        <source>Size grows</source>
        <translation>Crece el tamaño</translation>
    </message>
    <message>
        <source>Crown turns to hollow</source>
        <translation>De convexa a cóncava</translation>
    </message>
    <message>
        <source>Legs part</source>
        <translation>Los catetos se separan</translation>
    </message>
    <message>
        <source>The joint opens</source>
        <translation>La unión se abre</translation>
    </message>
    <message>
        <source>The joint closes</source>
        <translation>La unión se cierra</translation>
    </message>
    <message>
        <source>At {value}: {flips}.</source>
        <translation>A {value}: {flips}.</translation>
    </message>
    <message>
        <source>Up to {value} no verdict flips any more.</source>
        <translation>Hasta {value} ya no cambia ningún veredicto.</translation>
    </message>
    <message>
        <source>Both legs grow under the {leaf} leaf; watch who notices first.</source>
        <translation>Ambos catetos crecen bajo la hoja de {leaf}; vea quién lo nota primero.</translation>
    </message>
    <message>
        <source>The upper bead goes from crown to hollow, the lower one back; the legs stay as they are.</source>
        <translation>El cordón de arriba pasa de convexo a cóncavo y el de abajo al revés; los catetos no cambian.</translation>
    </message>
    <message>
        <source>The base leg grows while the upright leg shrinks.</source>
        <translation>El cateto en la base crece mientras el del montante mengua.</translation>
    </message>
    <message>
        <source>The joint opens beyond a right angle.</source>
        <translation>La unión se abre más allá del ángulo recto.</translation>
    </message>
    <message>
        <source>The joint closes below a right angle.</source>
        <translation>La unión se cierra por debajo del ángulo recto.</translation>
    </message>
    <message>
        <source>legs of {leg}</source>
        <translation>catetos de {leg}</translation>
    </message>
    <message>
        <source>crowns of {upper} above and {lower} below</source>
        <translation>caras de {upper} arriba y {lower} abajo</translation>
    </message>
    <message>
        <source>legs of {base} and {upright}</source>
        <translation>catetos de {base} y {upright}</translation>
    </message>
    <message>
        <source>all four corners become {after}</source>
        <translation>los cuatro rincones pasan a {after}</translation>
    </message>
    <message>
        <source>{bead} under the {edge}</source>
        <translation>{bead} bajo el {edge}</translation>
    </message>
    <message>
        <source>false comfort</source>
        <translation>falso alivio</translation>
    </message>
    <message>
        <source>false alarm</source>
        <translation>falsa alarma</translation>
    </message>
    <message>
        <source>{corner}, {state} becomes {false}</source>
        <translation>{corner}, {state} pasa a ser {false}</translation>
    </message>
    <message>
        <source>{corner}, {state} is no longer {false}</source>
        <translation>{corner}, {state} deja de ser {false}</translation>
    </message>
    <message>
        <source>{corner}, {before} becomes {after}, {false}</source>
        <translation>{corner}, {before} pasa a {after}, {false}</translation>
    </message>
    <message>
        <source>{corner}, {before} becomes {after}</source>
        <translation>{corner}, {before} pasa a {after}</translation>
    </message>
    <message>
        <source>{at} of {count}</source>
        <translation>{at} de {count}</translation>
    </message>
</context>
<context>
    <name>TermsForm</name>
    <message>
        <source>Time and order</source>
        <translation>Tiempo y orden</translation>
    </message>
    <message>
        <source>Minutes for the whole</source>
        <translation>Minutos para todo</translation>
    </message>
    <message>
        <source>Order, for each learner</source>
        <translation>Orden, para cada cual</translation>
    </message>
    <message>
        <source>shuffled</source>
        <translation>barajado</translation>
    </message>
    <message>
        <source>as written</source>
        <translation>como está</translation>
    </message>
    <message>
        <source>What passes</source>
        <translation>Qué aprueba</translation>
    </message>
    <message>
        <source>Pass mark over all, %</source>
        <translation>Nota mínima en total, %</translation>
    </message>
    <message>
        <source>One critical call fails the whole</source>
        <translation>Un dictamen crítico suspende todo</translation>
    </message>
    <message>
        <source>Critical: a weld is accepted that the rules reject beyond doubt.</source>
        <translation>Crítico: se acepta una soldadura que las reglas rechazan sin duda.</translation>
    </message>
    <message>
        <source>A mark that a skill has to reach as well, or nothing:</source>
        <translation>Nota que una destreza debe alcanzar también, o nada:</translation>
    </message>
    <message>
        <source>{skill}, %</source>
        <translation>{skill}, %</translation>
    </message>
    <message>
        <source>Helps that stay</source>
        <translation>Ayudas que quedan</translation>
    </message>
    <message>
        <source>Right would be: 1 to {most}</source>
        <translation>Sería correcto: de 1 a {most}</translation>
    </message>
    <message>
        <source>Right would be: 0 to 100</source>
        <translation>Sería correcto: de 0 a 100</translation>
    </message>
</context>
<context>
    <name>TimeView</name>
    <message>
        <source>Time left</source>
        <translation>Tiempo que queda</translation>
    </message>
    <message>
        <source>time is hidden</source>
        <translation>tiempo oculto</translation>
    </message>
    <message>
        <source>show  Y</source>
        <translation>mostrar  Y</translation>
    </message>
    <message>
        <source>hide  Y</source>
        <translation>ocultar  Y</translation>
    </message>
    <message>
        <source>Show the time left</source>
        <translation>Mostrar el tiempo que queda</translation>
    </message>
    <message>
        <source>Hide the time left</source>
        <translation>Ocultar el tiempo que queda</translation>
    </message>
</context>
<context>
    <name>ToolBar</name>
    <message>
        <source>Tray file</source>
        <translation>Bandeja</translation>
    </message>
    <message>
        <source>New</source>
        <translation>Nueva</translation>
    </message>
    <message>
        <source>Open...</source>
        <translation>Abrir...</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Guardar</translation>
    </message>
    <message>
        <source>Save as...</source>
        <translation>Guardar como...</translation>
    </message>
    <message>
        <source>Undo</source>
        <translation>Deshacer</translation>
    </message>
    <message>
        <source>Redo</source>
        <translation>Rehacer</translation>
    </message>
    <message>
        <source>Try on the bench</source>
        <translation>Probar en el banco</translation>
    </message>
    <message>
        <source>Undo: {what} (Ctrl+Z)</source>
        <translation>Deshacer: {what} (Ctrl+Z)</translation>
    </message>
    <message>
        <source>Redo: {what} (Ctrl+Y)</source>
        <translation>Rehacer: {what} (Ctrl+Y)</translation>
    </message>
    <message>
        <source>Not saved yet</source>
        <translation>Aún sin guardar</translation>
    </message>
    <message>
        <source>changed</source>
        <translation>con cambios</translation>
    </message>
    <message>
        <source>saved</source>
        <translation>guardada</translation>
    </message>
    <message>
        <source>Try</source>
        <translation>Probar</translation>
    </message>
</context>
<context>
    <name>TopBar</name>
    <message>
        <source>Bench</source>
        <translation>Banco</translation>
    </message>
    <message>
        <source>Previous coupon</source>
        <translation>Cupón anterior</translation>
    </message>
    <message>
        <source>Coupon</source>
        <translation>Cupón</translation>
    </message>
    <message>
        <source>Next coupon</source>
        <translation>Cupón siguiente</translation>
    </message>
    <message>
        <source>{n} of {count}  ✓ judged  {title}</source>
        <translation>{n} de {count}  ✓ juzgado  {title}</translation>
    </message>
    <message>
        <source>{n} of {count}  {title}</source>
        <translation>{n} de {count}  {title}</translation>
    </message>
    <message>
        <source>Four corners</source>
        <translation>Cuatro rincones</translation>
    </message>
    <message>
        <source>Reference</source>
        <translation>Referencia</translation>
    </message>
    <message>
        <source>Coupon shop</source>
        <translation>Taller de cupones</translation>
    </message>
    <message>
        <source>Logbook</source>
        <translation>Cuaderno</translation>
    </message>
    <message>
        <source>Sittings</source>
        <translation>Pruebas</translation>
    </message>
</context>
<context>
    <name>TrayList</name>
    <message>
        <source>Coupons of the tray</source>
        <translation>Cupones de la bandeja</translation>
    </message>
</context>
<context>
    <name>TrayOpener</name>
    <message>
        <source>Opening {name}…</source>
        <translation>Abriendo {name}…</translation>
    </message>
    <message>
        <source>Cancel</source>
        <translation>Cancelar</translation>
    </message>
</context>
<context>
    <name>TrayPanel</name>
    <message>
        <source>Tray</source>
        <translation>Bandeja</translation>
    </message>
    <message>
        <source>Title of the tray</source>
        <translation>Título de la bandeja</translation>
    </message>
    <message>
        <source>Add</source>
        <translation>Añadir</translation>
    </message>
    <message>
        <source>Add a coupon after the open one</source>
        <translation>Añadir un cupón después del abierto</translation>
    </message>
    <message>
        <source>Plain weld</source>
        <translation>Cordón sencillo</translation>
    </message>
    <message>
        <source>From a photo...</source>
        <translation>De una foto...</translation>
    </message>
    <message>
        <source>From a scan or drawing...</source>
        <translation>De un escaneo o dibujo...</translation>
    </message>
    <message>
        <source>From dice...</source>
        <translation>A los dados...</translation>
    </message>
    <message>
        <source>Duplicate</source>
        <translation>Duplicar</translation>
    </message>
    <message>
        <source>Delete</source>
        <translation>Borrar</translation>
    </message>
    <message>
        <source>Del</source>
        <translation>Supr</translation>
    </message>
    <message>
        <source>Alt+Up</source>
        <translation>Alt+Arriba</translation>
    </message>
    <message>
        <source>Move up</source>
        <translation>Subir</translation>
    </message>
    <message>
        <source>Alt+Down</source>
        <translation>Alt+Abajo</translation>
    </message>
    <message>
        <source>Move down</source>
        <translation>Bajar</translation>
    </message>
    <message>
        <source>Split...</source>
        <translation>Dividir...</translation>
    </message>
    <message>
        <source>Split: this coupon and all after it into a tray of their own</source>
        <translation>Dividir: este cupón y todos los siguientes a una bandeja propia</translation>
    </message>
    <message>
        <source>Merge...</source>
        <translation>Unir...</translation>
    </message>
    <message>
        <source>Merge: take another tray&apos;s coupons in</source>
        <translation>Unir: incorporar los cupones de otra bandeja</translation>
    </message>
    <message>
        <source>{at} of {count}</source>
        <translation>{at} de {count}</translation>
    </message>
</context>
<context>
    <name>Trying</name>
    <message>
        <source>On trial, from the sittings</source>
        <translation>A prueba, desde la página de pruebas</translation>
    </message>
    <message>
        <source>On trial: no call is kept. Ctrl+6 leads back to the sitting.</source>
        <translation>A prueba: no se guarda ningún dictamen. Ctrl+6 vuelve a la página de pruebas.</translation>
    </message>
    <message>
        <source>On trial, from the coupon shop</source>
        <translation>A prueba, del taller de cupones</translation>
    </message>
    <message>
        <source>On trial: no call is kept. Ctrl+4 leads back to the shop.</source>
        <translation>A prueba: ningún dictamen se guarda. Ctrl+4 vuelve al taller.</translation>
    </message>
</context>
<context>
    <name>UnforeseenDialog</name>
    <message>
        <source>Report</source>
        <translation>Informe</translation>
    </message>
    <message>
        <source>Something went wrong</source>
        <translation>Algo ha fallado</translation>
    </message>
    <message>
        <source>The last action may not have been done. What you have on the bench is still there, and calls on record are kept. Go on, or undo the last step (Z). If it happens again, quit and start anew.</source>
        <translation>Puede que la última acción no se haya hecho. Lo que tiene en el banco sigue ahí, y los dictámenes registrados se conservan. Continúe, o deshaga el último paso (Z). Si vuelve a ocurrir, salga y empiece de nuevo.</translation>
    </message>
    <message>
        <source>The program can&apos;t go on</source>
        <translation>El programa no puede continuar</translation>
    </message>
    <message>
        <source>It failed while it was starting. Calls on record are kept. Start it again; if this happens every time, install it again.</source>
        <translation>Falló al arrancar. Los dictámenes registrados se conservan. Ábralo otra vez; si ocurre siempre, instálelo de nuevo.</translation>
    </message>
    <message>
        <source>The report could not be written: copy it, it helps to mend this.</source>
        <translation>No se pudo escribir el informe: cópielo, ayuda a arreglar esto.</translation>
    </message>
    <message>
        <source>This report helps to mend it. It lies at {file}</source>
        <translation>Este informe ayuda a arreglarlo. Está en {file}</translation>
    </message>
    <message>
        <source>Copy report</source>
        <translation>Copiar informe</translation>
    </message>
    <message>
        <source>Quit</source>
        <translation>Salir</translation>
    </message>
    <message>
        <source>Go on</source>
        <translation>Continuar</translation>
    </message>
</context>
<context>
    <name>VerdictLine</name>
    <message>
        <source>Right call: {call}</source>
        <translation>Lo correcto: {call}</translation>
    </message>
</context>
<context>
    <name>WeldForm</name>
    <message>
        <source>Bead</source>
        <translation>Cordón</translation>
    </message>
    <message>
        <source>Joint</source>
        <translation>Junta</translation>
    </message>
    <message>
        <source>At the toes</source>
        <translation>En los bordes</translation>
    </message>
    <message>
        <source>Spatter</source>
        <translation>Salpicaduras</translation>
    </message>
    <message>
        <source>Add spatter</source>
        <translation>Añadir salpicadura</translation>
    </message>
    <message>
        <source>Plates</source>
        <translation>Chapas</translation>
    </message>
    <message>
        <source>Traced face, points: {n}</source>
        <translation>Cara trazada, puntos: {n}</translation>
    </message>
    <message>
        <source>Make it an arc</source>
        <translation>Hacerla arco</translation>
    </message>
    <message>
        <source>Face: an arc</source>
        <translation>Cara: un arco</translation>
    </message>
    <message>
        <source>Trace it</source>
        <translation>Trazarla</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>Drop {n}</source>
        <translation>Gota {n}</translation>
    </message>
    <message>
        <source>Take drop {n} away</source>
        <translation>Quitar la gota {n}</translation>
    </message>
</context>
<context>
    <name>WindowFrame</name>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Archivo</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Ver</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>A&amp;yuda</translation>
    </message>
    <message>
        <source>&amp;Open tray...</source>
        <translation>A&amp;brir bandeja...</translation>
    </message>
    <message>
        <source>&amp;Shipped trays</source>
        <translation>Bandejas &amp;incluidas</translation>
    </message>
    <message>
        <source>&amp;Recent trays</source>
        <translation>Bandejas &amp;recientes</translation>
    </message>
    <message>
        <source>&amp;Drill...</source>
        <translation>&amp;Ejercicio...</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Salir</translation>
    </message>
    <message>
        <source>As the &amp;system has it</source>
        <translation>Como el &amp;sistema</translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation>C&amp;laro</translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation>&amp;Oscuro</translation>
    </message>
    <message>
        <source>Less m&amp;otion</source>
        <translation>Menos mo&amp;vimiento</translation>
    </message>
    <message>
        <source>Lengths &amp;as the drawing has them</source>
        <translation>Longitudes &amp;como en el plano</translation>
    </message>
    <message>
        <source>Lengths in &amp;millimetres</source>
        <translation>Longitudes en &amp;milímetros</translation>
    </message>
    <message>
        <source>Lengths in &amp;inches</source>
        <translation>Longitudes en &amp;pulgadas</translation>
    </message>
    <message>
        <source>Lan&amp;guage</source>
        <translation>&amp;Idioma</translation>
    </message>
    <message>
        <source>&amp;Before you begin...</source>
        <translation>&amp;Antes de empezar...</translation>
    </message>
    <message>
        <source>&amp;Keys...</source>
        <translation>&amp;Teclas...</translation>
    </message>
    <message>
        <source>&amp;About, and where my files are...</source>
        <translation>A&amp;cerca de, y dónde están mis archivos...</translation>
    </message>
    <message>
        <source>Tab</source>
        <translation>Tab</translation>
    </message>
    <message>
        <source>go on to the next control; with Shift back</source>
        <translation>al control siguiente; con Mayús al anterior</translation>
    </message>
    <message>
        <source>Alt</source>
        <translation>Alt</translation>
    </message>
    <message>
        <source>with a letter that is underlined: open that menu</source>
        <translation>con una letra subrayada: abrir ese menú</translation>
    </message>
    <message>
        <source>Everywhere</source>
        <translation>En todas partes</translation>
    </message>
    <message>
        <source>Open tray</source>
        <translation>Abrir bandeja</translation>
    </message>
    <message>
        <source>Trays and sittings (*{suffix} *.sitting);;All files (*)</source>
        <translation>Bandejas y pruebas (*{suffix} *.sitting);;Todos los archivos (*)</translation>
    </message>
</context>
<context>
    <name>WordsForm</name>
    <message>
        <source>Coupon</source>
        <translation>Cupón</translation>
    </message>
    <message>
        <source>Id, unique in the tray</source>
        <translation>Identificador, único en la bandeja</translation>
    </message>
    <message>
        <source>judge the weld</source>
        <translation>juzgar el cordón</translation>
    </message>
    <message>
        <source>find its size</source>
        <translation>hallar su tamaño</translation>
    </message>
    <message>
        <source>state what a leaf shows</source>
        <translation>decir qué muestra una hoja</translation>
    </message>
    <message>
        <source>Task</source>
        <translation>Tarea</translation>
    </message>
    <message>
        <source>Title</source>
        <translation>Título</translation>
    </message>
    <message>
        <source>What it teaches, shown in the debrief</source>
        <translation>Qué enseña, se ve en el repaso</translation>
    </message>
    <message>
        <source>Hints, one by one on asking</source>
        <translation>Pistas, una a una si se piden</translation>
    </message>
    <message>
        <source>Add a hint</source>
        <translation>Añadir una pista</translation>
    </message>
    <message>
        <source>find the fault of the placed leaf</source>
        <translation>hallar el fallo de la hoja puesta</translation>
    </message>
    <message>
        <source>The placed leaf</source>
        <translation>La hoja puesta</translation>
    </message>
    <message>
        <source>base</source>
        <translation>base</translation>
    </message>
    <message>
        <source>upright</source>
        <translation>montante</translation>
    </message>
    <message>
        <source>none</source>
        <translation>ninguno</translation>
    </message>
    <message>
        <source>base and upright</source>
        <translation>base y montante</translation>
    </message>
    <message>
        <source>Said to gauge the leg on</source>
        <translation>Dicen medir el cateto de</translation>
    </message>
    <message>
        <source>Legs said to be gauged</source>
        <translation>Catetos que dicen medidos</translation>
    </message>
    <message>
        <source>Tilted by</source>
        <translation>Inclinada</translation>
    </message>
    <message>
        <source>Corner, along the base</source>
        <translation>Esquina, a lo largo de la base</translation>
    </message>
    <message>
        <source>Corner, off the base</source>
        <translation>Esquina, desde la base</translation>
    </message>
    <message>
        <source>Take the placed leaf away</source>
        <translation>Quitar la hoja puesta</translation>
    </message>
    <message>
        <source>Right: {faults}</source>
        <translation>Lo correcto: {faults}</translation>
    </message>
    <message>
        <source>English</source>
        <translation>Inglés</translation>
    </message>
    <message>
        <source>Spanish</source>
        <translation>Español</translation>
    </message>
    <message>
        <source>Hint {n}, English</source>
        <translation>Pista {n}, inglés</translation>
    </message>
    <message>
        <source>Hint {n}, Spanish</source>
        <translation>Pista {n}, español</translation>
    </message>
    <message>
        <source>Take hint {n} away</source>
        <translation>Quitar la pista {n}</translation>
    </message>
</context>
</TS>
