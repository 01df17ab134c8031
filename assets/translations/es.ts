<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="es" sourcelanguage="en">
<context>
    <name>Bench</name>
    <message>
        <source>Loupe on the tip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Loupe on the spur</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{size} leg, both members</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{size} throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>T</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>skewed T</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>plates {size}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>base {base}, upright {upright}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>root opening {size}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tight fit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seat the leaf and state what it shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Find the largest leaf that this weld meets.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Judge this weld against its callout.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Convex</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Flat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Hollow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Touch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Daylight</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Held off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not seated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Accept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Add weld metal</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Dress back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Refer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leg edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>throat edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Base leg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Upright leg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{mark}, {edge}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>spatter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>long edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>end edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>arc</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>base</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>weld face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lip on the base</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lip on the upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>groove in the base</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>groove in the upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>plate</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>tip</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>spur</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{leaf} on {steel}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source> and </source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>in the air</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>BenchScreen</name>
    <message>
        <source>Section of the weld</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No leaf in hand</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{leaf}: {contacts}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The call could not be kept</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The debrief is shown all the same, but the call is not in the records.

{file}: {reason}

Free some space there, or make the folder writable, and judge the coupon again.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>CallPanel</name>
    <message>
        <source>Make the call</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What is the face?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What does the leaf show at this seat?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Disposition of the weld</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How sure are you?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>How sure are you?  S, with Shift less sure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not said</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What the leaf shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>meets the callout</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>undersize or undercut</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>overlap or excess</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cannot be judged so</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Disposition</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{share} %</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Debrief</name>
    <message>
        <source>Face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leaf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Edge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Seat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Both legs</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Disposition</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leg on the base</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leg on the upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>actual throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>theoretical throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>effective size</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>effective throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>convexity</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>concavity</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>undercut at the base toe</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>undercut at the upright toe</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>overlap on the base</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>overlap on the upright</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>root opening</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The face is convex: {off} beyond the line from toe to toe.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The face is hollow: {off} short of the line from toe to toe.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The face is flat: {off} off the line from toe to toe.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No leaf was held to the weld.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A hollow face is read at the throat, with the throat edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A convex face is gauged at its legs, with the leg edge: at the throat its crown flatters it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The leg on the {member} was not gauged with the leg edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the leaf {mark}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the {mark} leaf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use {leaf}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use {leaf} and {other}, one on either side of the weld.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Use {leaf} and {other}, one on either side of the limit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A leaf reads a leg square to the member that its long edge lies on: leg × sin({angle}°).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reading {n}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: the leaf stands {depth} inside steel.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: the leaf is not seated.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: the leaf is not seated; in the way: {way}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{name}: the leaf shows {state}{gap}; you said {stated}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right call: {right}. No leaf can settle the {keys} here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right call: {right}. Every measure meets its limit.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right call: {right}. The {key} is {found}; {limit} is allowed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right call: {right}. The {key} is {found}; {called} called for + {opening} root opening = {limit} needed.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right call: {right}. The {key} is {found}; {limit} is called for.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>convex, {off}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>hollow, {off}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>flat face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>no reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>leaf {leaves}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>throat edge here</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>legs, not throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not gauged</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inside steel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>not seated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Touch: tip and toe meet; the leg is the leaf&apos;s size.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Touch: the spur meets the face, both edges flush.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Daylight, {gap} from tip to toe: the leg is smaller.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Daylight, {gap} from spur to face: the throat is smaller.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Held off by {gap}: weld metal lies under the tip; the leg is larger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Held off by {gap}: the spur rides on the face; the throat is larger.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not seated, and says nothing; in the way: {way}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not seated: it isn&apos;t home, and says nothing.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>DebriefPanel</name>
    <message>
        <source>Debrief</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What this coupon teaches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{n} %</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Score {n} percent</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You said: {stated}. That is right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You said: {stated}. That is accepted.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>You said: {stated}. Right call: {right}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The weld is closer to its limit than a leaf can tell: either verdict, or refer, is right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Accepting what the rules reject fails the coupon, whatever else was right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Reasons, numbered as in the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to add: handled and called right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your readings</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{seat}, {tool}: you said {state}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look at reading {n}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Marks</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>does not apply</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>True measures</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FaultsDialog</name>
    <message>
        <source>This tray can&apos;t be opened</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{file}

The tray that is open stays as it was.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Faults</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>whole file</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Right would be</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>FirstStartCard</name>
    <message>
        <source>Before you begin</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What this program is and is not</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>To the bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What this is</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>A training aid for the fillet weld gauge. You take a leaf off the rack, seat it on the cross-section of a weld, say what it shows and make the call. The program knows the true section and tells you afterwards.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>What it is not</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>It is not a measuring instrument, and it judges no real weld. It certifies nobody. The governing code, the contract documents and qualified people decide; where they differ from this program, they are right.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Your own gauge</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Leaves wear and bend, and a worn tip rejects good welds. A gauge needs checks of its own, before use and at the intervals that your shop sets. A section shows one place of a weld: on the real one, find the worst.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>In the shop</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Arc radiation burns eyes and skin, your own and those of people nearby. Metal stays hot long after it stops glowing. Edges, spatter and wire are sharp. Grinding throws sparks and dust. Fumes and gases need extraction and air. Follow your shop&apos;s rules and wear what they ask for.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Guide</name>
    <message>
        <source>New here?</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Judge the first coupon step by step. It takes five minutes.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Name the face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take a leaf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn it over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Press it home</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look closely</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say what it shows</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Gauge the other leg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Make the call</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put it on record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read the debrief</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is the throat edge. Swap ends (E): legs need the leg edge.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Switch the loupe on (L). It stays on the leaf&apos;s point.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look at the weld: is its face convex, flat or hollow? Choose that here.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take the leaf of the size called for. Click it, drag it, or press its number.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn the leaf over (F). Its tip now faces the other member.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Drag the leaf into the corner until steel stops it, or press Space.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The loupe stays on the tip. Zoom with + or Ctrl and wheel, and look for light.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Daylight: a gap at the tip. Held off: the weld keeps the tip away.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Set both readings against the callout. Then choose what the weld needs.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Say how sure you are if you like. Then put the call on record (Enter).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>This is the true section, and why. Play your handling back (Space).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>One leg proves nothing. Turn the leaf over again (F).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Now press it home on this side too (Space).</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Look again, and say what it shows here.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>GuideCard</name>
    <message>
        <source>Show me</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Not now</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{n} of {count}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Skip this step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Done</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Close the guide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Esc</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Guide: {title}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Guiding</name>
    <message>
        <source>&amp;First coupon, step by step</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>That was all of it. The guide stays in the Help menu.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Hands</name>
    <message>
        <source>Steel stops the leaf that way: {where}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Stopped short by steel: {where}.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to clean: the toes are clean.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Nothing to undo.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take a leaf off the rack first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No room for that here: move the leaf off the steel first.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The leaf is home as far as steel lets it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Steel stops the leaf that way.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>No leaf here is marked {digit}; the keys [ and ] go along.</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>JobCard</name>
    <message>
        <source>Job card</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>all of them</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Read all the rules</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Readings taken</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>None yet: seat a leaf and say what it shows.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Task</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Called for</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Joint</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Rules</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Weld symbol: fillet, {size}, {asked}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Keys</name>
    <message>
        <source>move the leaf 0.1 mm; with Shift 1 mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn it 0.1°; with Shift 1°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>press home</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>swap ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>clean the toes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>put the leaf back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>undo</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take the leaf with that mark; of the inch set, by place</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>take the next smaller or larger leaf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>state daylight, touch, held off, not seated</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>name the face convex, flat, hollow</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>call: accept, add weld metal, dress back, refer</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>surer by a tenth; with Shift less sure</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn up a bench note</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>put the call on record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>PgUp  PgDn</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the coupon before or after in the tray</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>zoom in, zoom out, fit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>loupe on or off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: lay the same coupon out again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: play your handling, or pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: one step of it; with Shift one picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Home  End</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: its beginning or end</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: play slower or faster</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: skip the pauses or not</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>after a call: truth and reasons on or off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Wheel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turn 5°; with Shift 0.5°</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Ctrl+Wheel</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>zoom to the pointer</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>KeysDialog</name>
    <message>
        <source>Keys at the bench</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>LeafButton</name>
    <message>
        <source>Leaf {mark}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>NextBar</name>
    <message>
        <source>Again   R</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The same coupon again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>First coupon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next coupon</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>NoteSlip</name>
    <message>
        <source>Bench note {n} of {count}: read it again</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Bench note {n} of {count}: turn it up</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Notes</name>
    <message>
        <source>Bench notes, if you are stuck</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Rack</name>
    <message>
        <source>Rack</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RackPanel</name>
    <message>
        <source>Rack</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Metric</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Metric leaves, marked by leg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inch leaves, marked by leg</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Throat-marked</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Metric leaves, marked by throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Millimetres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Inches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>mm</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>inch</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Zoom out</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Fit the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Zoom in</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Loupe</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Loupe on or off</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Throat</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>click or drag; keys 3 to 8, [ ]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>keys 1 to 9 by place, [ ]</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>keys 3 to 8: a 3 to a 8, [ ]</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ReadingRow</name>
    <message>
        <source>Take back: {reading}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Take this reading back</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>RecordBar</name>
    <message>
        <source>Put it on record   Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put it on record</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Enter</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the face</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>the disposition</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>a reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Still to state: {things}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Replay</name>
    <message>
        <source>takes a leaf</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>sets it down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lays a hand on it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>drags</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>lets go</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>moves it a little</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turns it over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>turns it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>presses home</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>swaps ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>puts it back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>cleans the toes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes a step back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>states a reading</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>takes a reading back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>follows the guide</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>puts the call on record</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>ReplayPanel</name>
    <message>
        <source>Your handling</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Truth and reasons  T</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Show truth and reasons over the picture</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Moment of the handling</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Recorded as it happened; nothing is smoothed. Arrow keys go step by step.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pause  Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Play  Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Pause</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Play</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{at} of {all} s</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>at reading {n}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>StepPanel</name>
    <message>
        <source>Move the leaf</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>Steps</name>
    <message>
        <source>Turn left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move up</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move left</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move down</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Move right</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Press home</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Space</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Turn over</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Swap ends</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Clean toes</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Put back</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Esc</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Undo</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>TopBar</name>
    <message>
        <source>Bench</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Previous coupon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Coupon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Next coupon</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{n} of {count}  ✓ judged  {title}</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>{n} of {count}  {title}</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>UnforeseenDialog</name>
    <message>
        <source>Something went wrong</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>The last action may not have been done. What you have on the bench is still there: go on, or undo the last step (Z). If it happens again, close the program and open it anew; calls on record are kept. The details below help to mend it.</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Details</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Copy details</source>
        <translation type="unfinished"></translation>
    </message>
</context>
<context>
    <name>WindowFrame</name>
    <message>
        <source>&amp;File</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Open tray...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>As the &amp;system has it</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lengths &amp;as the drawing has them</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lengths in &amp;millimetres</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Lengths in &amp;inches</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Before you begin...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>&amp;Keys...</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Open tray</source>
        <translation type="unfinished"></translation>
    </message>
    <message>
        <source>Trays (*{suffix});;All files (*)</source>
        <translation type="unfinished"></translation>
    </message>
</context>
</TS>
