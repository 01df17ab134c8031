<?xml version='1.0' encoding='utf-8'?>
<TS version="2.1" language="en" sourcelanguage="en">
  <context>
    <name>ClassDealing</name>
    <message numerus="yes">
      <source>{name}: %n call(s)</source>
      <translation>
        <numerusform>{name}: %n call</numerusform>
        <numerusform>{name}: %n calls</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>Begun and not handed in: %n sitting(s), sealed in {folder}. Whose doesn't show before it is resumed, so nothing of that is erased.</source>
      <translation>
        <numerusform>Begun and not handed in: %n sitting, sealed in {folder}. Whose doesn't show before it is resumed, so nothing of that is erased.</numerusform>
        <numerusform>Begun and not handed in: %n sittings, sealed in {folder}. Whose doesn't show before it is resumed, so nothing of that is erased.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>ClassResults</name>
    <message numerus="yes">
      <source>%n paper(s)</source>
      <translation>
        <numerusform>%n paper</numerusform>
        <numerusform>%n papers</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>Counts</name>
    <message numerus="yes">
      <source>%n outline(s)</source>
      <translation>
        <numerusform>%n outline</numerusform>
        <numerusform>%n outlines</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n point(s)</source>
      <translation>
        <numerusform>%n point</numerusform>
        <numerusform>%n points</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n point(s) farther off than the others scatter</source>
      <translation>
        <numerusform>%n point farther off than the others scatter</numerusform>
        <numerusform>%n points farther off than the others scatter</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n point(s) in patches that stand off</source>
      <translation>
        <numerusform>%n point in patches that stand off</numerusform>
        <numerusform>%n points in patches that stand off</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n place(s) where nothing was seen</source>
      <translation>
        <numerusform>%n place where nothing was seen</numerusform>
        <numerusform>%n places where nothing was seen</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>DoneStep</name>
    <message numerus="yes">
      <source>The result notes %n interruption(s), with the time of each.</source>
      <translation>
        <numerusform>The result notes %n interruption, with the time of each.</numerusform>
        <numerusform>The result notes %n interruptions, with the time of each.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>EntrantsPanel</name>
    <message numerus="yes">
      <source>%n learner(s) sit it; nobody else may.</source>
      <translation>
        <numerusform>%n learner sit it; nobody else may.</numerusform>
        <numerusform>%n learners sit it; nobody else may.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>LogbookScreen</name>
    <message numerus="yes">
      <source>%n call(s) kept aside.</source>
      <translation>
        <numerusform>%n call kept aside.</numerusform>
        <numerusform>%n calls kept aside.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>PaperPage</name>
    <message numerus="yes">
      <source>Call: {called}. Right call: {right}. {seconds} s in %n visit(s).</source>
      <translation>
        <numerusform>Call: {called}. Right call: {right}. {seconds} s in %n visit.</numerusform>
        <numerusform>Call: {called}. Right call: {right}. {seconds} s in %n visits.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>PassphraseDialog</name>
    <message numerus="yes">
      <source>Bring in %n result file(s)</source>
      <translation>
        <numerusform>Bring in %n result file</numerusform>
        <numerusform>Bring in %n result files</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>PeopleView</name>
    <message numerus="yes">
      <source>%n learner(s) without a code: they can't sit, and nothing of them is sent.</source>
      <translation>
        <numerusform>%n learner without a code: they can't sit, and nothing of them is sent.</numerusform>
        <numerusform>%n learners without a code: they can't sit, and nothing of them is sent.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>RetentionPanel</name>
    <message numerus="yes">
      <source>Of {learners} something is due: %n call(s) in all.</source>
      <translation>
        <numerusform>Of {learners} something is due: %n call in all.</numerusform>
        <numerusform>Of {learners} something is due: %n calls in all.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>ShutStrip</name>
    <message numerus="yes">
      <source>Shut: %n paper(s) handed in at this machine, so that whoever sits here next can't look up the right calls. The passphrase shows them until the program is closed or the next sitting begins.</source>
      <translation>
        <numerusform>Shut: %n paper handed in at this machine, so that whoever sits here next can't look up the right calls. The passphrase shows them until the program is closed or the next sitting begins.</numerusform>
        <numerusform>Shut: %n papers handed in at this machine, so that whoever sits here next can't look up the right calls. The passphrase shows them until the program is closed or the next sitting begins.</numerusform>
      </translation>
    </message>
  </context>
  <context>
    <name>SittingCounts</name>
    <message numerus="yes">
      <source>%n coupon(s)</source>
      <translation>
        <numerusform>%n coupon</numerusform>
        <numerusform>%n coupons</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n learner(s)</source>
      <translation>
        <numerusform>%n learner</numerusform>
        <numerusform>%n learners</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n thing(s) to put right; nobody is added before that:</source>
      <translation>
        <numerusform>%n thing to put right; nobody is added before that:</numerusform>
        <numerusform>%n things to put right; nobody is added before that:</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n call(s)</source>
      <translation>
        <numerusform>%n call</numerusform>
        <numerusform>%n calls</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n answer(s)</source>
      <translation>
        <numerusform>%n answer</numerusform>
        <numerusform>%n answers</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n paper(s)</source>
      <translation>
        <numerusform>%n paper</numerusform>
        <numerusform>%n papers</numerusform>
      </translation>
    </message>
    <message numerus="yes">
      <source>%n mark(s) set by hand</source>
      <translation>
        <numerusform>%n mark set by hand</numerusform>
        <numerusform>%n marks set by hand</numerusform>
      </translation>
    </message>
  </context>
</TS>