<?xml version="1.0" encoding="utf-8"?>
<!DOCTYPE TS>
<TS version="2.1" language="de_DE" sourcelanguage="en">
<context>
    <name>Balance</name>
    <message>
        <source>Only people who are trained and authorised for it balance on the machine; start permission is asked for and given for every single run.</source>
        <translation>An der Maschine wuchten nur dafür ausgebildete und befugte Personen aus; die Anlauffreigabe wird für jeden einzelnen Lauf eingeholt und erteilt.</translation>
    </message>
    <message>
        <source>Before hands go near the rotor: isolate, lock and tag out every energy source, prove it dead, and hold the rotor against turning by draught, load or springs.</source>
        <translation>Bevor Hände an den Rotor kommen: alle Energiequellen trennen, gegen Wiedereinschalten sichern und kennzeichnen, Energiefreiheit feststellen und den Rotor gegen Drehen durch Zug, Last oder Federn festhalten.</translation>
    </message>
    <message>
        <source>A trial mass flies off like a bullet: bolt, clamp or weld it so that it holds the force at full speed, on a place made to carry it; never tape, wire or magnet alone.</source>
        <translation>Eine Testmasse fliegt ab wie ein Geschoss: schrauben, klemmen oder schweißen, dass sie die Kraft bei voller Drehzahl hält, an einer dafür gebauten Stelle; nie nur mit Klebeband, Draht oder Magnet.</translation>
    </message>
    <message>
        <source>Stay below the trial mass that is advised. If vibration rises sharply at run-up, stop at once and do not wait for a reading.</source>
        <translation>Unter der empfohlenen Testmasse bleiben. Steigt die Schwingung beim Hochlauf stark an, sofort abstellen und keine Ablesung abwarten.</translation>
    </message>
    <message>
        <source>Every guard and cover is back and closed before each run, and nobody stands in the plane of the rotor.</source>
        <translation>Vor jedem Lauf sind alle Schutzvorrichtungen und Abdeckungen wieder angebracht und geschlossen, und niemand steht in der Rotorebene.</translation>
    </message>
    <message>
        <source>Never pass the permitted speed of the rotor; mind the number of starts the motor allows an hour, and hot surfaces.</source>
        <translation>Nie die zulässige Drehzahl des Rotors überschreiten; zulässige Anläufe je Stunde des Motors und heiße Oberflächen beachten.</translation>
    </message>
    <message>
        <source>Do not grind, drill or weld a rotor without the maker&apos;s or a responsible engineer&apos;s word; earth a weld beside the weld, never through bearings.</source>
        <translation>Am Rotor nicht schleifen, bohren oder schweißen ohne Freigabe des Herstellers oder eines verantwortlichen Ingenieurs; beim Schweißen die Masse neben der Naht anschließen, nie über Lager.</translation>
    </message>
    <message>
        <source>Find out first whether it is unbalance: dirt, a cracked blade, looseness, a bent shaft or resonance are not cured by masses.</source>
        <translation>Zuerst klären, ob es Unwucht ist: Schmutz, gerissene Schaufel, Losesitz, krumme Welle oder Resonanz werden durch Massen nicht behoben.</translation>
    </message>
    <message>
        <source>Site rules, local codes and licensed electrical and mechanical practice come first; this page is advice and no permit to work.</source>
        <translation>Betriebsregeln, örtliche Vorschriften und die Arbeit zugelassener Elektro- und Mechanikfachkräfte gehen vor; diese Seite ist ein Rat und kein Erlaubnisschein.</translation>
    </message>
    <message>
        <source>stated side</source>
        <translation>angegebene Seite</translation>
    </message>
    <message>
        <source>Places are counted with the rotation from the mark, seen from the %1.</source>
        <translation>Plätze zählen ab der Marke in Drehrichtung, Blick von: %1.</translation>
    </message>
    <message>
        <source>Places are counted against the rotation from the mark, seen from the %1.</source>
        <translation>Plätze zählen ab der Marke gegen die Drehrichtung, Blick von: %1.</translation>
    </message>
    <message>
        <source>It turns clockwise as seen from there.</source>
        <translation>Von dort gesehen dreht er im Uhrzeigersinn.</translation>
    </message>
    <message>
        <source>It turns anticlockwise as seen from there.</source>
        <translation>Von dort gesehen dreht er gegen den Uhrzeigersinn.</translation>
    </message>
    <message>
        <source>Phase is a lead: degrees from the peak to the mark.</source>
        <translation>Phase als Voreilung: Grad von der Spitze zur Marke.</translation>
    </message>
    <message>
        <source>Phase is a lag: degrees from the mark to the peak.</source>
        <translation>Phase als Nacheilung: Grad von der Marke zur Spitze.</translation>
    </message>
    <message>
        <source>two planes, influence coefficients</source>
        <translation>zwei Ebenen, Einflusskoeffizienten</translation>
    </message>
    <message>
        <source>one plane, four runs without phase</source>
        <translation>eine Ebene, vier Läufe ohne Phase</translation>
    </message>
    <message>
        <source>one plane, influence coefficients</source>
        <translation>eine Ebene, Einflusskoeffizienten</translation>
    </message>
    <message>
        <source>%1 g at %2°</source>
        <translation>%1 g bei %2°</translation>
    </message>
    <message>
        <source>%1 at %2°</source>
        <translation>%1 bei %2°</translation>
    </message>
    <message>
        <source>place</source>
        <translation>Platz</translation>
    </message>
    <message>
        <source>at</source>
        <translation>bei</translation>
    </message>
    <message>
        <source>mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>any</source>
        <translation>beliebig</translation>
    </message>
    <message>
        <source>%1°</source>
        <translation>%1°</translation>
    </message>
    <message>
        <source>%1 g</source>
        <translation>%1 g</translation>
    </message>
    <message>
        <source>%1: fit %2</source>
        <translation>%1: %2 anbringen</translation>
    </message>
    <message>
        <source>At a radius of %1 mm; unbalance as found %2 g mm.</source>
        <translation>Auf Radius %1 mm; vorgefundene Unwucht %2 g mm.</translation>
    </message>
    <message>
        <source>The trial mass stays where it is.</source>
        <translation>Die Testmasse bleibt, wo sie ist.</translation>
    </message>
    <message>
        <source>The trial mass is taken off first.</source>
        <translation>Die Testmasse wird zuerst abgenommen.</translation>
    </message>
    <message>
        <source>Left over by the places and steps: %1.</source>
        <translation>Rest durch Plätze und Stufung: %1.</translation>
    </message>
    <message>
        <source>Or take off all masses that are there and fit one instead: %1.</source>
        <translation>Oder alle vorhandenen Massen abnehmen und dafür eine anbringen: %1.</translation>
    </message>
    <message>
        <source>Permissible here by %1: %2 g mm; the check run tells what is left.</source>
        <translation>Hier zulässig nach %1: %2 g mm; der Kontrolllauf zeigt den Rest.</translation>
    </message>
    <message>
        <source>Left by the check run: %1 g mm.</source>
        <translation>Rest nach Kontrolllauf: %1 g mm.</translation>
    </message>
    <message>
        <source>Left by the check run: %1 g mm, within the %2 g mm of %3 (ISO 21940-11).</source>
        <translation>Rest nach Kontrolllauf: %1 g mm, innerhalb der %2 g mm nach %3 (ISO 21940-11).</translation>
    </message>
    <message>
        <source>Left by the check run: %1 g mm, more than the %2 g mm of %3 (ISO 21940-11).</source>
        <translation>Rest nach Kontrolllauf: %1 g mm, mehr als die %2 g mm nach %3 (ISO 21940-11).</translation>
    </message>
    <message>
        <source>To trim, add %1.</source>
        <translation>Zum Nachwuchten %1 hinzufügen.</translation>
    </message>
    <message>
        <source>Vibration at 1x</source>
        <translation>Schwingung bei 1x</translation>
    </message>
    <message>
        <source>%1: as found %2; expected with these masses %3.</source>
        <translation>%1: vorgefunden %2; mit diesen Massen erwartet %3.</translation>
    </message>
    <message>
        <source>next to nothing</source>
        <translation>so gut wie nichts</translation>
    </message>
    <message>
        <source>Check run %1.</source>
        <translation>Kontrolllauf %1.</translation>
    </message>
    <message>
        <source>One gram in %1 makes %2 %3 there.</source>
        <translation>Ein Gramm in %1 macht %2 %3 dort aus.</translation>
    </message>
    <message>
        <source>The circles miss one point by %1 % of the vibration as found.</source>
        <translation>Die Kreise verfehlen einen gemeinsamen Punkt um %1 % der vorgefundenen Schwingung.</translation>
    </message>
    <message>
        <source>Condition of both planes: %1; 1 is best, over 20 is refused.</source>
        <translation>Kondition beider Ebenen: %1; 1 ist am besten, über 20 wird abgewiesen.</translation>
    </message>
    <message>
        <source>run</source>
        <translation>Lauf</translation>
    </message>
    <message>
        <source>trial mass</source>
        <translation>Testmasse</translation>
    </message>
    <message>
        <source>r/min</source>
        <translation>r/min</translation>
    </message>
    <message>
        <source>0, as found</source>
        <translation>0, vorgefunden</translation>
    </message>
    <message>
        <source>check</source>
        <translation>Kontrolle</translation>
    </message>
    <message>
        <source>Refused: %1.</source>
        <translation>Abgewiesen: %1.</translation>
    </message>
    <message>
        <source>One value is missing yet before masses can be told.</source>
        <translation>Noch ein Wert fehlt, bevor Massen angegeben werden können.</translation>
    </message>
    <message>
        <source>%1 values are missing yet before masses can be told.</source>
        <translation>Noch %1 Werte fehlen, bevor Massen angegeben werden können.</translation>
    </message>
</context>
<context>
    <name>Engine</name>
    <message>
        <source>unbalance</source>
        <translation>Unwucht</translation>
    </message>
    <message>
        <source>misalignment</source>
        <translation>Ausrichtfehler</translation>
    </message>
    <message>
        <source>bent shaft</source>
        <translation>krumme Welle</translation>
    </message>
    <message>
        <source>looseness</source>
        <translation>Lose</translation>
    </message>
    <message>
        <source>soft foot</source>
        <translation>Hinkefuß</translation>
    </message>
    <message>
        <source>resonance</source>
        <translation>Resonanz</translation>
    </message>
    <message>
        <source>rub</source>
        <translation>Streifen</translation>
    </message>
    <message>
        <source>outer-race defect</source>
        <translation>Außenringschaden</translation>
    </message>
    <message>
        <source>inner-race defect</source>
        <translation>Innenringschaden</translation>
    </message>
    <message>
        <source>rolling-element defect</source>
        <translation>Wälzkörperschaden</translation>
    </message>
    <message>
        <source>cage defect</source>
        <translation>Käfigschaden</translation>
    </message>
    <message>
        <source>dry or worn bearing</source>
        <translation>trockenes oder verschlissenes Lager</translation>
    </message>
    <message>
        <source>defect of an unknown bearing</source>
        <translation>Schaden an einem unbekannten Lager</translation>
    </message>
    <message>
        <source>bearing current</source>
        <translation>Lagerstrom</translation>
    </message>
    <message>
        <source>bearing</source>
        <translation>Lager</translation>
    </message>
    <message>
        <source>worn gear mesh</source>
        <translation>verschlissener Zahneingriff</translation>
    </message>
    <message>
        <source>damaged gear tooth</source>
        <translation>beschädigter Zahn</translation>
    </message>
    <message>
        <source>worn or loose belt</source>
        <translation>verschlissener oder loser Riemen</translation>
    </message>
    <message>
        <source>blade pass</source>
        <translation>Schaufeldurchgang</translation>
    </message>
    <message>
        <source>cavitation</source>
        <translation>Kavitation</translation>
    </message>
    <message>
        <source>rough flow</source>
        <translation>unruhige Strömung</translation>
    </message>
    <message>
        <source>broken or cracked rotor bars</source>
        <translation>gebrochene oder gerissene Rotorstäbe</translation>
    </message>
    <message>
        <source>electrical 2 x mains</source>
        <translation>elektrisch 2 x Netz</translation>
    </message>
    <message>
        <source>uneven air gap</source>
        <translation>ungleicher Luftspalt</translation>
    </message>
    <message>
        <source>unbalanced supply</source>
        <translation>unsymmetrische Versorgung</translation>
    </message>
    <message>
        <source>overheating</source>
        <translation>Überhitzung</translation>
    </message>
    <message>
        <source>sensor</source>
        <translation>Sensor</translation>
    </message>
    <message>
        <source>raised vibration, cause not named</source>
        <translation>erhöhte Schwingung, Ursache nicht benannt</translation>
    </message>
    <message>
        <source>asked for by a person</source>
        <translation>von einer Person verlangt</translation>
    </message>
    <message>
        <source>early</source>
        <translation>früh</translation>
    </message>
    <message>
        <source>developed</source>
        <translation>ausgeprägt</translation>
    </message>
    <message>
        <source>late</source>
        <translation>spät</translation>
    </message>
    <message>
        <source>watch</source>
        <translation>beobachten</translation>
    </message>
    <message>
        <source>suspect</source>
        <translation>verdächtig</translation>
    </message>
    <message>
        <source>probable</source>
        <translation>wahrscheinlich</translation>
    </message>
    <message>
        <source>raised</source>
        <translation>erhöht</translation>
    </message>
    <message>
        <source>high</source>
        <translation>hoch</translation>
    </message>
    <message>
        <source>stopped</source>
        <translation>steht</translation>
    </message>
    <message>
        <source>energised_not_turning</source>
        <translation>unter Spannung, dreht nicht</translation>
    </message>
    <message>
        <source>turning_unpowered</source>
        <translation>dreht ohne Antrieb</translation>
    </message>
    <message>
        <source>run_up_or_down</source>
        <translation>Hoch- oder Auslauf</translation>
    </message>
    <message>
        <source>running</source>
        <translation>läuft</translation>
    </message>
    <message>
        <source>running_unloaded</source>
        <translation>läuft ohne Last</translation>
    </message>
    <message>
        <source>unsteady</source>
        <translation>unruhig</translation>
    </message>
    <message>
        <source>unknown</source>
        <translation>unbekannt</translation>
    </message>
    <message>
        <source>found</source>
        <translation>gefunden</translation>
    </message>
    <message>
        <source>absent</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>simulation only</source>
        <translation>nur an der Simulation</translation>
    </message>
    <message>
        <source>open data</source>
        <translation>an offenen Daten</translation>
    </message>
    <message>
        <source>published numbers</source>
        <translation>an veröffentlichten Zahlen</translation>
    </message>
    <message>
        <source>not stated</source>
        <translation>nicht angegeben</translation>
    </message>
    <message>
        <source>order parts by</source>
        <translation>Teile bestellen bis</translation>
    </message>
    <message>
        <source>do not run beyond</source>
        <translation>nicht länger laufen lassen als bis</translation>
    </message>
    <message>
        <source>inspect by</source>
        <translation>prüfen bis</translation>
    </message>
    <message>
        <source>next planned stop</source>
        <translation>nächster geplanter Stillstand</translation>
    </message>
    <message>
        <source>filled in by the planner</source>
        <translation>trägt die Arbeitsplanung ein</translation>
    </message>
    <message>
        <source>order nothing before the inspection</source>
        <translation>vor der Prüfung nichts bestellen</translation>
    </message>
    <message>
        <source>order nothing before the inspection; the parts listed are what a repair may take</source>
        <translation>vor der Prüfung nichts bestellen; die Teile sind, was eine Reparatur brauchen kann</translation>
    </message>
    <message>
        <source>nothing to wait for; have the small parts listed at hand</source>
        <translation>auf nichts zu warten; die Kleinteile bereithalten</translation>
    </message>
    <message>
        <source>no part is known to be needed</source>
        <translation>kein Teil ist als nötig bekannt</translation>
    </message>
    <message>
        <source>no date: how bad it is was not graded</source>
        <translation>kein Datum: wie schlimm es ist, wurde nicht eingestuft</translation>
    </message>
    <message>
        <source>no job yet</source>
        <translation>noch kein Auftrag</translation>
    </message>
    <message>
        <source>act: ahead of the plan</source>
        <translation>handeln: vor dem Plan</translation>
    </message>
    <message>
        <source>act: ahead of the plan; the date below is the latest</source>
        <translation>handeln: vor dem Plan; das Datum unten ist das späteste</translation>
    </message>
    <message>
        <source>act: ahead of the plan; the date below has passed</source>
        <translation>handeln: vor dem Plan; das Datum unten ist vorbei</translation>
    </message>
    <message>
        <source>plan: a job for a planned stop</source>
        <translation>einplanen: für einen geplanten Stillstand</translation>
    </message>
    <message>
        <source>plan: a job for a planned stop before the date below</source>
        <translation>einplanen: für einen geplanten Stillstand vor dem Datum unten</translation>
    </message>
    <message>
        <source>plan: a job for a planned stop; the date below has passed</source>
        <translation>einplanen: für einen geplanten Stillstand; das Datum unten ist vorbei</translation>
    </message>
    <message>
        <source>watch: no repair yet, looked at again in the next round</source>
        <translation>beobachten: noch keine Reparatur, wird in der nächsten Runde wieder angesehen</translation>
    </message>
    <message>
        <source>unseen: nothing could be judged here this week</source>
        <translation>ungesehen: hier war diese Woche nichts zu beurteilen</translation>
    </message>
    <message>
        <source>leave: nothing asks for work</source>
        <translation>lassen: nichts verlangt Arbeit</translation>
    </message>
    <message>
        <source>Possible: level and pattern fit, but these recordings alone cannot name the cause. The inspection decides.</source>
        <translation>Möglich: Pegel und Muster passen, aber diese Aufzeichnungen allein können die Ursache nicht benennen. Die Prüfung entscheidet.</translation>
    </message>
    <message>
        <source>That it changed is as sure as the weight of the change says; the cause is possible, no more. The inspection decides.</source>
        <translation>Dass es sich geändert hat, ist so sicher, wie das Gewicht der Änderung sagt; die Ursache ist möglich, mehr nicht. Die Prüfung entscheidet.</translation>
    </message>
    <message>
        <source>This finding rests on a change against its own baseline, so there are no lines to add up.</source>
        <translation>Dieser Befund beruht auf einer Änderung gegen das eigene Ausgangsband, darum gibt es keine Linien zu summieren.</translation>
    </message>
    <message>
        <source>No evidence beyond chance. This is not the odds that the fault is there.</source>
        <translation>Kein Hinweis über den Zufall hinaus. Das ist keine Wahrscheinlichkeit dafür, dass der Schaden da ist.</translation>
    </message>
    <message>
        <source>Too few findings were opened and reported here yet to say how often one is confirmed; please report what you find.</source>
        <translation>Noch wurden hier zu wenige Befunde geöffnet und gemeldet, um zu sagen, wie oft einer bestätigt wird; bitte melden, was gefunden wird.</translation>
    </message>
    <message>
        <source>This finding has no weight: it rests on level and pattern, so there are no lines to add up.</source>
        <translation>Dieser Befund hat kein Gewicht: er beruht auf Pegel und Muster, darum gibt es keine Linien zu summieren.</translation>
    </message>
    <message>
        <source>stock number</source>
        <translation>Lagernummer</translation>
    </message>
    <message>
        <source>on hand</source>
        <translation>vorhanden</translation>
    </message>
    <message>
        <source>lead time</source>
        <translation>Lieferzeit</translation>
    </message>
    <message>
        <source>point of isolation</source>
        <translation>Trennstelle</translation>
    </message>
    <message>
        <source>locked by</source>
        <translation>verschlossen von</translation>
    </message>
    <message>
        <source>proved dead by</source>
        <translation>frei geprüft von</translation>
    </message>
    <message>
        <source>The site fills these in from its own list. Nothing here says which or how many there are.</source>
        <translation>Das Werk trägt diese aus seiner eigenen Liste ein. Nichts hier sagt, welche oder wie viele es sind.</translation>
    </message>
    <message>
        <source>confirm on the plate before ordering</source>
        <translation>vor dem Bestellen am Schild prüfen</translation>
    </message>
    <message>
        <source>if the motor is changed instead; compare the plates</source>
        <translation>falls stattdessen der Motor getauscht wird; Schilder vergleichen</translation>
    </message>
    <message>
        <source>People, hours, tools and permits are common practice for the inspection; the site knows its machine and decides.</source>
        <translation>Leute, Stunden, Werkzeug und Erlaubnisse sind für die Prüfung üblich; das Werk kennt seine Maschine und entscheidet.</translation>
    </message>
    <message>
        <source>People, hours, tools and permits are common practice for such a job; the site knows its machine and decides.</source>
        <translation>Leute, Stunden, Werkzeug und Erlaubnisse sind für eine solche Arbeit üblich; das Werk kennt seine Maschine und entscheidet.</translation>
    </message>
    <message>
        <source>grease</source>
        <translation>Fett</translation>
    </message>
    <message>
        <source>seal</source>
        <translation>Dichtung</translation>
    </message>
    <message>
        <source>coupling element</source>
        <translation>Kupplungselement</translation>
    </message>
    <message>
        <source>shims</source>
        <translation>Passbleche</translation>
    </message>
    <message>
        <source>spare motor</source>
        <translation>Ersatzmotor</translation>
    </message>
    <message>
        <source>balance weights</source>
        <translation>Wuchtgewichte</translation>
    </message>
    <message>
        <source>foundation bolts</source>
        <translation>Fundamentschrauben</translation>
    </message>
    <message>
        <source>belt set</source>
        <translation>Riemensatz</translation>
    </message>
    <message>
        <source>gear pair</source>
        <translation>Radpaar</translation>
    </message>
    <message>
        <source>oil</source>
        <translation>Öl</translation>
    </message>
    <message>
        <source>impeller</source>
        <translation>Laufrad</translation>
    </message>
    <message>
        <source>clearance</source>
        <translation>Lagerluft</translation>
    </message>
    <message>
        <source>seal or shield</source>
        <translation>Dicht- oder Deckscheibe</translation>
    </message>
    <message>
        <source>cage</source>
        <translation>Käfig</translation>
    </message>
    <message>
        <source>type</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>grams</source>
        <translation>Gramm</translation>
    </message>
    <message>
        <source>size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>thickness</source>
        <translation>Dicke</translation>
    </message>
    <message>
        <source>size of foot</source>
        <translation>Fußgröße</translation>
    </message>
    <message>
        <source>designation</source>
        <translation>Bezeichnung</translation>
    </message>
    <message>
        <source>fixing</source>
        <translation>Befestigung</translation>
    </message>
    <message>
        <source>grade</source>
        <translation>Güte</translation>
    </message>
    <message>
        <source>drawing</source>
        <translation>Zeichnung</translation>
    </message>
    <message>
        <source>teeth</source>
        <translation>Zähne</translation>
    </message>
    <message>
        <source>litres</source>
        <translation>Liter</translation>
    </message>
    <message>
        <source>profile</source>
        <translation>Profil</translation>
    </message>
    <message>
        <source>length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>belts in the set</source>
        <translation>Riemen im Satz</translation>
    </message>
    <message>
        <source>lifting</source>
        <translation>Heben</translation>
    </message>
    <message>
        <source>hot work where a flame or grinder is used</source>
        <translation>Heißarbeit, wo mit Flamme oder Schleifer gearbeitet wird</translation>
    </message>
    <message>
        <source>work at height above 2 m</source>
        <translation>Arbeit in über 2 m Höhe</translation>
    </message>
    <message>
        <source>explosive dust or gas where the area is zoned</source>
        <translation>Staub- oder Gasexplosion, wo der Bereich eine Zone ist</translation>
    </message>
    <message>
        <source>live electrical measurement</source>
        <translation>Messen unter Spannung</translation>
    </message>
    <message>
        <source>confined space where somebody reaches into the casing</source>
        <translation>enger Raum, wo jemand ins Gehäuse greift</translation>
    </message>
    <message>
        <source>opening of a line that holds a medium</source>
        <translation>Öffnen einer Leitung mit Medium</translation>
    </message>
    <message>
        <source>Before a guard comes off: isolate, lock and tag out every source of energy, and prove it dead.</source>
        <translation>Bevor eine Schutzhaube abkommt: jede Energiequelle trennen, verschließen, kennzeichnen und die Freiheit von Energie feststellen.</translation>
    </message>
    <message>
        <source>Stored energy stays: springs, pressure, hanging loads, capacitors of drives, a fan turned by draught. Block, vent, earth or wait.</source>
        <translation>Gespeicherte Energie bleibt: Federn, Druck, hängende Lasten, Kondensatoren von Umrichtern, ein Ventilator, den der Zug dreht. Blockieren, entlasten, erden oder warten.</translation>
    </message>
    <message>
        <source>Surfaces may be hot enough to burn; let them cool or protect yourself.</source>
        <translation>Oberflächen können zum Verbrennen heiß sein; abkühlen lassen oder sich schützen.</translation>
    </message>
    <message>
        <source>Run tests only with every guard fitted and nobody within reach of moving parts.</source>
        <translation>Probeläufe nur mit allen Schutzhauben und niemandem in Reichweite bewegter Teile.</translation>
    </message>
    <message>
        <source>Only people who are trained and authorised for it do this work; electrical work is for qualified electrical staff.</source>
        <translation>Nur dafür ausgebildete und befugte Personen tun diese Arbeit; elektrische Arbeit ist Sache von Elektrofachkräften.</translation>
    </message>
    <message>
        <source>Site rules, local codes and licensed electrical and mechanical practice come first. This sheet is advice from measured data; it is no permit to work.</source>
        <translation>Werksregeln, örtliche Vorschriften und die zugelassene elektrische und mechanische Praxis gehen vor. Dieses Blatt ist Rat aus Messdaten; es ist keine Arbeitserlaubnis.</translation>
    </message>
    <message>
        <source>as told</source>
        <translation>wie gesagt</translation>
    </message>
    <message>
        <source>another fault</source>
        <translation>ein anderer Schaden</translation>
    </message>
    <message>
        <source>nothing found</source>
        <translation>nichts gefunden</translation>
    </message>
    <message>
        <source>not opened</source>
        <translation>nicht geöffnet</translation>
    </message>
    <message>
        <source>it showed as (ISO 14224 manner)</source>
        <translation>es zeigte sich als (nach Art der ISO 14224)</translation>
    </message>
    <message>
        <source>VIB vibration</source>
        <translation>VIB Schwingung</translation>
    </message>
    <message>
        <source>NOI noise</source>
        <translation>NOI Geräusch</translation>
    </message>
    <message>
        <source>OHE overheating</source>
        <translation>OHE Überhitzung</translation>
    </message>
    <message>
        <source>STD structural</source>
        <translation>STD Struktur</translation>
    </message>
    <message>
        <source>BRD breakdown</source>
        <translation>BRD Ausfall</translation>
    </message>
    <message>
        <source>SER minor</source>
        <translation>SER geringfügig</translation>
    </message>
    <message>
        <source>OTH other</source>
        <translation>OTH anderes</translation>
    </message>
    <message>
        <source>came from</source>
        <translation>kam von</translation>
    </message>
    <message>
        <source>wear</source>
        <translation>Verschleiß</translation>
    </message>
    <message>
        <source>fatigue</source>
        <translation>Ermüdung</translation>
    </message>
    <message>
        <source>breakage</source>
        <translation>Bruch</translation>
    </message>
    <message>
        <source>corrosion</source>
        <translation>Korrosion</translation>
    </message>
    <message>
        <source>dirt or build-up</source>
        <translation>Schmutz oder Anbackung</translation>
    </message>
    <message>
        <source>lubrication</source>
        <translation>Schmierung</translation>
    </message>
    <message>
        <source>electrical</source>
        <translation>elektrisch</translation>
    </message>
    <message>
        <source>other</source>
        <translation>anderes</translation>
    </message>
    <message>
        <source>bearing damage (ISO 15243)</source>
        <translation>Lagerschaden (ISO 15243)</translation>
    </message>
    <message>
        <source>electrical erosion</source>
        <translation>Stromerosion</translation>
    </message>
    <message>
        <source>plastic deformation</source>
        <translation>plastische Verformung</translation>
    </message>
    <message>
        <source>cracking</source>
        <translation>Rissbildung</translation>
    </message>
    <message>
        <source>old part kept and tagged</source>
        <translation>Altteil aufgehoben und gekennzeichnet</translation>
    </message>
    <message>
        <source>photo</source>
        <translation>Foto</translation>
    </message>
    <message>
        <source>yes</source>
        <translation>ja</translation>
    </message>
    <message>
        <source>no</source>
        <translation>nein</translation>
    </message>
    <message>
        <source>what was found</source>
        <translation>was gefunden wurde</translation>
    </message>
    <message>
        <source>work order number</source>
        <translation>Auftragsnummer</translation>
    </message>
    <message>
        <source>people x hours</source>
        <translation>Leute x Stunden</translation>
    </message>
    <message>
        <source>done on</source>
        <translation>erledigt am</translation>
    </message>
    <message>
        <source>tag of the old part</source>
        <translation>Kennzeichen des Altteils</translation>
    </message>
    <message>
        <source>alignment before: offset, angle</source>
        <translation>Ausrichtung vorher: Versatz, Winkel</translation>
    </message>
    <message>
        <source>alignment after: offset, angle</source>
        <translation>Ausrichtung nachher: Versatz, Winkel</translation>
    </message>
    <message>
        <source>planner</source>
        <translation>Planung</translation>
    </message>
    <message>
        <source>fitter</source>
        <translation>Monteur</translation>
    </message>
    <message>
        <source>engineer</source>
        <translation>Ingenieur</translation>
    </message>
    <message>
        <source>no axial channel: it shows there first</source>
        <translation>kein axialer Kanal: dort zeigt es sich zuerst</translation>
    </message>
    <message>
        <source>no radial channel</source>
        <translation>kein radialer Kanal</translation>
    </message>
    <message>
        <source>no vertical channel: a foot lifts that way</source>
        <translation>kein senkrechter Kanal: so hebt sich ein Fuß</translation>
    </message>
    <message>
        <source>one radial direction: it answers in one direction most</source>
        <translation>nur eine radiale Richtung: es antwortet in einer am meisten</translation>
    </message>
    <message>
        <source>the directions of the channels are not given</source>
        <translation>die Richtungen der Kanäle sind nicht angegeben</translation>
    </message>
    <message>
        <source>the number of blades is not known</source>
        <translation>die Zahl der Schaufeln ist nicht bekannt</translation>
    </message>
    <message>
        <source>no frame temperature comes with the recordings</source>
        <translation>mit den Aufzeichnungen kommt keine Gehäusetemperatur</translation>
    </message>
    <message>
        <source>its bearings are not described</source>
        <translation>seine Lager sind nicht beschrieben</translation>
    </message>
    <message>
        <source>its bearings are not described, and it is heard through the coupling only</source>
        <translation>seine Lager sind nicht beschrieben, und es ist nur durch die Kupplung zu hören</translation>
    </message>
    <message>
        <source>its bearings are not described, and it is heard through the belt only</source>
        <translation>seine Lager sind nicht beschrieben, und es ist nur durch den Riemen zu hören</translation>
    </message>
    <message>
        <source>heard through the coupling only</source>
        <translation>nur durch die Kupplung zu hören</translation>
    </message>
    <message>
        <source>heard through the belt only</source>
        <translation>nur durch den Riemen zu hören</translation>
    </message>
    <message>
        <source>no stray flux in this recording</source>
        <translation>kein Streufluss in dieser Aufzeichnung</translation>
    </message>
    <message>
        <source>no point at this bearing: its high frequencies hardly travel</source>
        <translation>kein Messpunkt an diesem Lager: seine hohen Frequenzen kommen kaum weit</translation>
    </message>
    <message>
        <source>the belt&apos;s length is not known, so its rate is not</source>
        <translation>die Länge des Riemens ist nicht bekannt, also auch sein Umlauf nicht</translation>
    </message>
    <message>
        <source>the inverter&apos;s output frequency is not known</source>
        <translation>die Ausgangsfrequenz des Umrichters ist nicht bekannt</translation>
    </message>
    <message>
        <source>the number of rotor bars is not known, so the slot lines are not</source>
        <translation>die Zahl der Rotorstäbe ist nicht bekannt, also auch die Nutlinien nicht</translation>
    </message>
    <message>
        <source>the third harmonic lies above what this flux channel carries</source>
        <translation>die dritte Harmonische liegt über dem, was dieser Flusskanal überträgt</translation>
    </message>
    <message>
        <source>an axial reading at the drive end</source>
        <translation>eine axiale Messung an der Antriebsseite</translation>
    </message>
    <message>
        <source>a radial reading</source>
        <translation>eine radiale Messung</translation>
    </message>
    <message>
        <source>a vertical reading</source>
        <translation>eine senkrechte Messung</translation>
    </message>
    <message>
        <source>a second radial reading, across the first</source>
        <translation>eine zweite radiale Messung, quer zur ersten</translation>
    </message>
    <message>
        <source>enter their designations</source>
        <translation>ihre Bezeichnungen eintragen</translation>
    </message>
    <message>
        <source>enter its geometry or orders, from the maker</source>
        <translation>seine Geometrie oder Ordnungen vom Hersteller eintragen</translation>
    </message>
    <message>
        <source>enter pulleys and length</source>
        <translation>Scheiben und Länge eintragen</translation>
    </message>
    <message>
        <source>a node that sends it, with the ambient</source>
        <translation>ein Knoten, der sie mit der Umgebung sendet</translation>
    </message>
    <message>
        <source>a node with a flux channel at the motor&apos;s frame</source>
        <translation>ein Knoten mit Flusskanal am Motorgehäuse</translation>
    </message>
    <message>
        <source>a point at this bearing, stud or adhesive mount</source>
        <translation>ein Messpunkt an diesem Lager, geschraubt oder geklebt</translation>
    </message>
    <message>
        <source>a recording at another load</source>
        <translation>eine Aufzeichnung bei anderer Last</translation>
    </message>
    <message>
        <source>the speed better known: stray flux, or a tachometer</source>
        <translation>die Drehzahl genauer: Streufluss oder Drehzahlgeber</translation>
    </message>
    <message>
        <source>more than a minute at steady speed</source>
        <translation>mehr als eine Minute bei stetiger Drehzahl</translation>
    </message>
    <message>
        <source>a longer recording or a higher sample rate</source>
        <translation>eine längere Aufzeichnung oder höhere Abtastrate</translation>
    </message>
    <message>
        <source>a sample rate of 10 kHz or more on a stud or adhesive mount</source>
        <translation>10 kHz Abtastrate oder mehr, geschraubt oder geklebt</translation>
    </message>
    <message>
        <source>a sample rate of 6.4 kHz or more and a stud or adhesive mount</source>
        <translation>6,4 kHz Abtastrate oder mehr, geschraubt oder geklebt</translation>
    </message>
    <message>
        <source>a higher sample rate</source>
        <translation>eine höhere Abtastrate</translation>
    </message>
    <message>
        <source>a sensor of less noise</source>
        <translation>ein rauschärmerer Sensor</translation>
    </message>
    <message>
        <source>a sensor that reads lower</source>
        <translation>ein Sensor, der tiefer misst</translation>
    </message>
    <message>
        <source>a wider range</source>
        <translation>ein weiterer Messbereich</translation>
    </message>
    <message>
        <source>a narrower range</source>
        <translation>ein engerer Messbereich</translation>
    </message>
    <message>
        <source>a look at the node</source>
        <translation>ein Blick auf den Knoten</translation>
    </message>
    <message>
        <source>the node seated firmly</source>
        <translation>der Knoten fest aufgesetzt</translation>
    </message>
    <message>
        <source>enter rotor_bars, from the maker or a slot count</source>
        <translation>rotor_bars vom Hersteller oder nach Nutzahl eintragen</translation>
    </message>
    <message>
        <source>stray flux, or output_hz with the recording</source>
        <translation>Streufluss, oder output_hz bei der Aufzeichnung</translation>
    </message>
    <message>
        <source>a long narrow recording: 32 s at 1 kHz</source>
        <translation>eine lange schmale Aufzeichnung: 32 s bei 1 kHz</translation>
    </message>
    <message>
        <source>What is not named here may still be missed.</source>
        <translation>Was hier nicht steht, kann trotzdem übersehen werden.</translation>
    </message>
    <message>
        <source>No blind spot is known for these recordings; that proves nothing.</source>
        <translation>Kein blinder Fleck ist für diese Aufzeichnungen bekannt; das beweist nichts.</translation>
    </message>
    <message>
        <source>The list tells what these sensors can hear. Leave proves no machine sound, and a fault that draws no vibration, flux or heat at a sensor is not in it.</source>
        <translation>Die Liste sagt, was diese Sensoren hören können. „Lassen“ beweist keine Maschine gesund, und ein Schaden ohne Schwingung, Fluss oder Wärme an einem Sensor steht nicht darin.</translation>
    </message>
    <message>
        <source>Windings, insulation, terminals and protection are not judged here, and a frame temperature is not a winding temperature.</source>
        <translation>Wicklungen, Isolation, Klemmen und Schutz werden hier nicht beurteilt, und eine Gehäusetemperatur ist keine Wicklungstemperatur.</translation>
    </message>
    <message>
        <source>Entries by zone, by change and by hand carry no stated share of chance; those on evidence do, on average over rounds, not each week.</source>
        <translation>Einträge nach Zone, Änderung und von Hand tragen keinen genannten Zufallsanteil; die nach Hinweisen tragen ihn im Mittel über Runden, nicht jede Woche.</translation>
    </message>
    <message>
        <source>Dates follow from how bad a finding is and how critical the machine is; they are no forecast of how long a part lasts.</source>
        <translation>Die Daten folgen daraus, wie schlimm ein Befund und wie wichtig die Maschine ist; sie sagen nicht voraus, wie lange ein Teil hält.</translation>
    </message>
    <message>
        <source>What happens between two recordings is not seen. Noise, smell, smoke, heat and what operators notice come before this list.</source>
        <translation>Was zwischen zwei Aufzeichnungen geschieht, wird nicht gesehen. Geräusch, Geruch, Rauch, Hitze und was Bediener merken, gehen dieser Liste vor.</translation>
    </message>
    <message>
        <source>accepted</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>not decided yet</source>
        <translation>noch nicht entschieden</translation>
    </message>
    <message>
        <source>No machine is on leave.</source>
        <translation>Keine Maschine steht auf Lassen.</translation>
    </message>
    <message>
        <source>no finding was reported on yet</source>
        <translation>noch wurde zu keinem Befund etwas gemeldet</translation>
    </message>
    <message>
        <source>%1 at %2</source>
        <translation>%1 an %2</translation>
    </message>
    <message>
        <source>insulated ring</source>
        <translation>isolierter Ring</translation>
    </message>
    <message>
        <source>Whoever answers for the machine has agreed in writing; permit, risk assessment and site rules come first, and local codes and licensed practice before this sheet.</source>
        <translation>Wer für die Maschine verantwortlich ist, hat schriftlich zugestimmt; Erlaubnis, Gefährdungsbeurteilung und Regeln des Standorts gehen vor, und örtliche Vorschriften und zugelassene Fachkräfte stehen über diesem Blatt.</translation>
    </message>
    <message>
        <source>Only competent, authorised people make the change, with the machine isolated, locked off, tried dead and at rest, stored energy let off.</source>
        <translation>Nur fachkundige, befugte Personen nehmen die Änderung vor; die Maschine ist dabei freigeschaltet, gegen Wiedereinschalten gesichert, auf Spannungsfreiheit geprüft und steht still, gespeicherte Energie ist abgebaut.</translation>
    </message>
    <message>
        <source>The level, temperature or noise at which the machine is stopped at once is agreed and written here, and somebody watches it during the first run.</source>
        <translation>Pegel, Temperatur oder Geräusch, bei dem die Maschine sofort angehalten wird, ist vereinbart und hier eingetragen, und jemand überwacht es während des ersten Laufs.</translation>
    </message>
    <message>
        <source>Nobody stands in line with the rotor, reaches behind a guard or works on it while it turns; it runs with all guards fitted.</source>
        <translation>Niemand steht in der Ebene des Rotors, greift hinter eine Schutzeinrichtung oder arbeitet an ihm, während er dreht; er läuft mit allen Schutzeinrichtungen.</translation>
    </message>
    <message>
        <source>The mass is secured so that it can neither turn nor fly off, clears everything fixed, and stays within the unbalance allowed for this rotor; it is taken out again and its removal is checked.</source>
        <translation>Die Masse ist so gesichert, dass sie sich weder verdrehen noch wegfliegen kann, streift nirgends an und bleibt innerhalb der für diesen Rotor zulässigen Unwucht; sie wird wieder entfernt und das Entfernen geprüft.</translation>
    </message>
    <message>
        <source>The damaged bearing carries its load for the whole trial: no lifting gear, no machine whose seizing could hurt, a date by which it comes out.</source>
        <translation>Das beschädigte Lager trägt seine Last während des ganzen Versuchs: kein Hebezeug, keine Maschine, deren Blockieren jemanden verletzen könnte, und ein Tag, bis zu dem es ausgebaut wird.</translation>
    </message>
    <message>
        <source>The bolt is slackened with the machine at rest, never while it turns; the others hold it alone, and it is tightened to its torque afterwards.</source>
        <translation>Die Schraube wird bei stehender Maschine gelöst, niemals während sie dreht; die übrigen halten sie allein, und danach wird sie mit ihrem Drehmoment angezogen.</translation>
    </message>
    <message>
        <source>a mass and its radius are needed</source>
        <translation>eine Masse und ihr Radius sind nötig</translation>
    </message>
    <message>
        <source>the speed of this shaft is not known</source>
        <translation>die Drehzahl dieser Welle ist nicht bekannt</translation>
    </message>
    <message>
        <source>say where on the machine</source>
        <translation>angeben, wo an der Maschine</translation>
    </message>
    <message>
        <source>choose the element that is damaged</source>
        <translation>das beschädigte Element wählen</translation>
    </message>
    <message>
        <source>say what is changed</source>
        <translation>angeben, was geändert wird</translation>
    </message>
    <message>
        <source>choose the channel that is followed</source>
        <translation>den Kanal wählen, der verfolgt wird</translation>
    </message>
    <message>
        <source>the orders of the bearing at this place are not known: give its geometry in the register</source>
        <translation>die Ordnungen des Lagers an diesem Ort sind nicht bekannt: seine Geometrie in den Stammdaten angeben</translation>
    </message>
    <message>
        <source>nothing is promised yet</source>
        <translation>noch ist nichts zugesagt</translation>
    </message>
    <message>
        <source>the value at which the machine is stopped is not given</source>
        <translation>der Wert, bei dem die Maschine angehalten wird, ist nicht angegeben</translation>
    </message>
    <message>
        <source>nobody is named who answers for it</source>
        <translation>niemand ist genannt, der dafür verantwortlich ist</translation>
    </message>
    <message>
        <source>Before the change that never happens, and at most 1 recording in 20 reaches it alone.</source>
        <translation>Vor der Änderung kommt das nie vor, und höchstens 1 von 20 Aufzeichnungen erreicht es für sich allein.</translation>
    </message>
    <message>
        <source>No other fault of a bearing is told with a greater weight.</source>
        <translation>Kein anderer Lagerfehler wird mit größerem Gewicht genannt.</translation>
    </message>
    <message>
        <source>slip moves these lines by up to 2 %; they stand in the envelope spectrum</source>
        <translation>Schlupf verschiebt diese Linien um bis zu 2 %; sie stehen im Hüllkurvenspektrum</translation>
    </message>
    <message>
        <source>1x may stay as it is: the range holds what it is now</source>
        <translation>1x kann bleiben, wie es ist: der Bereich enthält den jetzigen Wert</translation>
    </message>
    <message>
        <source>a foot that lifts cuts the motion off: 1x grows, mostly upright, orders 2 to 10 follow, half orders where it rattles; how much cannot be said beforehand (common practice, no source)</source>
        <translation>ein abhebender Fuß schneidet die Bewegung ab: 1x wächst, meist senkrecht, Ordnungen 2 bis 10 folgen, halbe Ordnungen, wo er klappert; wie viel, lässt sich vorher nicht sagen (übliche Praxis, ohne Quelle)</translation>
    </message>
    <message>
        <source>listed machine has no decision</source>
        <translation>aufgelistete Maschine ohne Entscheidung</translation>
    </message>
    <message>
        <source>listed machines have no decision</source>
        <translation>aufgelistete Maschinen ohne Entscheidung</translation>
    </message>
    <message>
        <source>unseen machine has no confirmed reason</source>
        <translation>ungesehene Maschine ohne bestätigten Grund</translation>
    </message>
    <message>
        <source>unseen machines have no confirmed reason</source>
        <translation>ungesehene Maschinen ohne bestätigten Grund</translation>
    </message>
    <message>
        <source>machine of the sample was not opened</source>
        <translation>Maschine der Stichprobe nicht geöffnet</translation>
    </message>
    <message>
        <source>machines of the sample were not opened</source>
        <translation>Maschinen der Stichprobe nicht geöffnet</translation>
    </message>
    <message>
        <source>the machines on leave are not accepted as a block</source>
        <translation>die zu belassenden Maschinen sind noch nicht als Block angenommen</translation>
    </message>
    <message>
        <source>%1 %2: %3</source>
        <translation>%1 %2: %3</translation>
    </message>
    <message>
        <source>%1 %2: %3 and %4 more</source>
        <translation>%1 %2: %3 und %4 weitere</translation>
    </message>
    <message>
        <source>plane 1</source>
        <translation>Ebene 1</translation>
    </message>
    <message>
        <source>plane 2</source>
        <translation>Ebene 2</translation>
    </message>
    <message>
        <source>sensor 1</source>
        <translation>Sensor 1</translation>
    </message>
    <message>
        <source>sensor 2</source>
        <translation>Sensor 2</translation>
    </message>
    <message>
        <source>%1 of %2 cautions are confirmed</source>
        <translation>%1 von %2 Hinweisen sind bestätigt</translation>
    </message>
</context>
<context>
    <name>Guide</name>
    <message>
        <source>The round</source>
        <translation>Die Runde</translation>
    </message>
    <message>
        <source>Once a week every machine of the fleet is looked at. The list is grouped by what is to be done: &lt;b&gt;act&lt;/b&gt;, &lt;b&gt;plan&lt;/b&gt;, &lt;b&gt;watch&lt;/b&gt;, then &lt;b&gt;unseen&lt;/b&gt; (no verdict was possible, with the reason), then &lt;b&gt;leave&lt;/b&gt;. The disc beside a word fills with the urgency.</source>
        <translation>Einmal in der Woche wird jede Maschine der Flotte angesehen. Die Liste ist danach gruppiert, was zu tun ist: &lt;b&gt;handeln&lt;/b&gt;, &lt;b&gt;einplanen&lt;/b&gt;, &lt;b&gt;beobachten&lt;/b&gt;, dann &lt;b&gt;ungesehen&lt;/b&gt; (kein Urteil war möglich, mit dem Grund), dann &lt;b&gt;belassen&lt;/b&gt;. Die Scheibe neben dem Wort füllt sich mit der Dringlichkeit.</translation>
    </message>
    <message>
        <source>Open a round from the Round menu. It is frozen at that moment: what arrives later is told, and counts in the next one.</source>
        <translation>Eine Runde wird im Menü Runde eröffnet. Sie steht von da an fest: Was später eintrifft, wird gemeldet und zählt in der nächsten.</translation>
    </message>
    <message>
        <source>Go through the list with the arrow keys. {round.look} opens the machine, {round.accept} accepts the verdict, {round.dispute} disputes it with a reason, {round.defer} defers it to a day, {round.next} goes to the next one without a decision.</source>
        <translation>Mit den Pfeiltasten durch die Liste gehen. {round.look} öffnet die Maschine, {round.accept} nimmt das Urteil an, {round.dispute} bestreitet es mit einem Grund, {round.defer} verschiebt es auf einen Tag, {round.next} geht zur nächsten ohne Entscheidung.</translation>
    </message>
    <message>
        <source>Unseen machines want a reason ({round.unseen}). The machines on leave are accepted together ({round.leave}) after the sample that the program drew was opened: what the sample turns up is the only field check on what the list misses.</source>
        <translation>Ungesehene Maschinen brauchen einen Grund ({round.unseen}). Die zu belassenden werden zusammen angenommen ({round.leave}), nachdem die vom Programm gezogene Stichprobe geöffnet wurde: Was sie zutage bringt, ist die einzige Feldprobe darauf, was die Liste übersieht.</translation>
    </message>
    <message>
        <source>Close the round when nothing is left to decide. A closed round is kept and never changes.</source>
        <translation>Die Runde abschließen, wenn nichts mehr zu entscheiden ist. Eine abgeschlossene Runde wird aufbewahrt und ändert sich nie.</translation>
    </message>
    <message>
        <source>The line under the title says how often the list is chance: at most one in ten of what is listed on evidence, on average over rounds; and how many were confirmed here so far.</source>
        <translation>Die Zeile unter dem Titel sagt, wie oft die Liste Zufall ist: höchstens einer von zehn nach Belegen gelisteten Einträgen, im Mittel über die Runden; und wie viele hier bisher bestätigt wurden.</translation>
    </message>
    <message>
        <source>The machine</source>
        <translation>Die Maschine</translation>
    </message>
    <message>
        <source>Across the top the train: choose a bearing or a measuring point in it. On the left the waterfall over the trend, on one time axis; below them the chosen recording as spectrum, envelope spectrum, waveform or orbit. On the right the evidence.</source>
        <translation>Quer oben der Strang: dort ein Lager oder einen Messpunkt wählen. Links der Wasserfall über dem Trend auf einer Zeitachse; darunter die gewählte Aufzeichnung als Spektrum, Hüllkurvenspektrum, Zeitsignal oder Orbit. Rechts die Belege.</translation>
    </message>
    <message>
        <source>All parts share one selection: choosing a line in the table moves the cursor in every plot, choosing a moment in the trend loads that recording.</source>
        <translation>Alle Teile teilen eine Auswahl: Eine Linie der Tabelle zu wählen setzt den Cursor in jedem Diagramm, einen Zeitpunkt im Trend zu wählen lädt diese Aufzeichnung.</translation>
    </message>
    <message>
        <source>Every plot is moved alike: the wheel zooms, dragging shifts, Shift and dragging frames a part, a double click or Home shows all. The arrow keys step from point to point. A right click copies or saves it as a picture or as a table.</source>
        <translation>Jedes Diagramm wird gleich bewegt: Das Rad vergrößert, Ziehen verschiebt, Umschalt und Ziehen rahmt einen Teil ein, Doppelklick oder Pos1 zeigt alles. Die Pfeiltasten gehen von Punkt zu Punkt. Ein Rechtsklick kopiert oder speichert es als Bild oder als Tabelle.</translation>
    </message>
    <message>
        <source>{machine.sheet} shows the findings sheet, {machine.event} notes an event.</source>
        <translation>{machine.sheet} zeigt das Befundblatt, {machine.event} hält ein Ereignis fest.</translation>
    </message>
    <message>
        <source>The evidence</source>
        <translation>Die Belege</translation>
    </message>
    <message>
        <source>Each fault that was considered has a weight in decibans: how unlike chance its lines are. 30 decibans are reached by chance lines in at most 1 recording of 1,000. The weight is not the odds that the fault is there: how often a repair found it is what this site&apos;s own record says.</source>
        <translation>Jeder erwogene Fehler hat ein Gewicht in Deziban: wie unähnlich dem Zufall seine Linien sind. 30 Deziban erreichen Zufallslinien in höchstens 1 von 1.000 Aufzeichnungen. Das Gewicht ist nicht die Wahrscheinlichkeit, dass der Fehler da ist: Wie oft eine Reparatur ihn fand, sagt die eigene Bilanz dieses Standorts.</translation>
    </message>
    <message>
        <source>The table shows each expected line: where it should be, what was found there, how far above the floor, and how many decibans it added (to the right) or took away (to the left). The rows add up to the verdict.</source>
        <translation>Die Tabelle zeigt jede erwartete Linie: wo sie sein sollte, was dort gefunden wurde, wie weit über dem Grundrauschen und wie viele Deziban sie beitrug (nach rechts) oder nahm (nach links). Die Zeilen ergeben zusammen das Urteil.</translation>
    </message>
    <message>
        <source>Below it stands the other side: what speaks against, which other fault would explain the same lines, which lines were left out because something ordinary stands there, and what the sensor could not see.</source>
        <translation>Darunter steht die andere Seite: was dagegen spricht, welcher andere Fehler dieselben Linien erklärte, welche Linien ausgelassen wurden, weil dort etwas Gewöhnliches steht, und was der Sensor nicht sehen konnte.</translation>
    </message>
    <message>
        <source>A zone (A to D) grades shaft-rate and broadband vibration only. A bearing or gear finding has a stage instead: early, developed, late.</source>
        <translation>Eine Zone (A bis D) bewertet nur drehfrequente und breitbandige Schwingung. Ein Lager- oder Getriebebefund hat stattdessen ein Stadium: früh, entwickelt, spät.</translation>
    </message>
    <message>
        <source>The register</source>
        <translation>Die Stammdaten</translation>
    </message>
    <message>
        <source>A verdict is as good as the description: poles and rated speed, bearings with their designation or geometry, teeth and pulleys, where each sensor sits and how it is fixed. What is wrong is said beside the field while you type; a description that is not sound is not saved.</source>
        <translation>Ein Urteil ist so gut wie die Beschreibung: Polzahl und Nenndrehzahl, Lager mit Bezeichnung oder Geometrie, Zähne und Scheiben, wo jeder Sensor sitzt und wie er befestigt ist. Was nicht stimmt, steht beim Tippen neben dem Feld; eine fehlerhafte Beschreibung wird nicht gespeichert.</translation>
    </message>
    <message>
        <source>What you save holds from a day on: an examination uses what was fitted then. The history tab shows what changed when.</source>
        <translation>Was gespeichert wird, gilt von einem Tag an: Eine Auswertung nimmt, was damals eingebaut war. Das Blatt Verlauf zeigt, was sich wann geändert hat.</translation>
    </message>
    <message>
        <source>The blind-spot table says for each fault whether this sensor could see it at all, and what would cure it.</source>
        <translation>Die Tabelle der blinden Flecken sagt zu jedem Fehler, ob dieser Sensor ihn überhaupt sehen könnte und was Abhilfe schüfe.</translation>
    </message>
    <message>
        <source>{register.save} saves, {register.add} makes a new machine, {register.copy} duplicates one.</source>
        <translation>{register.save} speichert, {register.add} legt eine neue Maschine an, {register.copy} verdoppelt eine.</translation>
    </message>
    <message>
        <source>Taking recordings in</source>
        <translation>Aufzeichnungen einlesen</translation>
    </message>
    <message>
        <source>Files and folders can be dropped on the window. WAV, FLAC, CSV, universal files, MAT and HDF5 are read, and tables of ready-made levels; what a file cannot say comes from a file of the same name ending in .json beside it.</source>
        <translation>Dateien und Ordner können auf das Fenster gezogen werden. Gelesen werden WAV, FLAC, CSV, UFF, MAT und HDF5 sowie Tabellen fertiger Pegel; was eine Datei nicht sagen kann, kommt aus einer gleichnamigen Datei mit der Endung .json daneben.</translation>
    </message>
    <message>
        <source>What could not be taken in is listed with the file, the place and the rule that was broken; the rest goes on. Taking the same files in again does no harm.</source>
        <translation>Was nicht eingelesen werden konnte, wird mit Datei, Stelle und verletzter Regel gelistet; der Rest läuft weiter. Dieselben Dateien noch einmal einzulesen schadet nicht.</translation>
    </message>
    <message>
        <source>The clock of a cheap node may be wrong by a few per cent. Where the mains shows in a recording it is the ruler, and the page says so.</source>
        <translation>Die Uhr eines billigen Knotens kann um einige Prozent falsch gehen. Wo sich das Netz in einer Aufzeichnung zeigt, ist es der Maßstab, und die Seite sagt es.</translation>
    </message>
    <message>
        <source>The findings sheet</source>
        <translation>Das Befundblatt</translation>
    </message>
    <message>
        <source>One page a job, for the planner who reads no spectra: what is wrong in shop words, by when, what to do, which parts, what to measure afterwards, and how to stay safe doing it.</source>
        <translation>Eine Seite je Auftrag, für den Planer, der keine Spektren liest: was nicht stimmt in Werkstattworten, bis wann, was zu tun ist, welche Teile, was danach zu messen ist und wie man dabei heil bleibt.</translation>
    </message>
    <message>
        <source>An empty box means the program does not know: confirm on the plate before ordering. The sheet is advice, not a permit to work.</source>
        <translation>Ein leeres Kästchen heißt, das Programm weiß es nicht: vor dem Bestellen am Typenschild bestätigen. Das Blatt ist ein Rat, keine Arbeitserlaubnis.</translation>
    </message>
    <message>
        <source>Jobs and what was found</source>
        <translation>Aufträge und was gefunden wurde</translation>
    </message>
    <message>
        <source>A job groups the findings of one machine and is drafted, issued, scheduled, done, verified and closed. After a job the program watches whether it cured the machine: it compares 20 like recordings over 3 days with the time before.</source>
        <translation>Ein Auftrag fasst die Befunde einer Maschine zusammen und ist entworfen, erteilt, terminiert, erledigt, nachgewiesen und abgeschlossen. Nach einem Auftrag verfolgt das Programm, ob er die Maschine geheilt hat: Es vergleicht 20 gleichartige Aufzeichnungen über 3 Tage mit der Zeit davor.</translation>
    </message>
    <message>
        <source>Report what was found when a finding was opened. From 20 reports on the sheets say how often the program was right here.</source>
        <translation>Melden, was gefunden wurde, als ein Befund geöffnet wurde. Ab 20 Meldungen sagen die Blätter, wie oft das Programm hier recht hatte.</translation>
    </message>
    <message>
        <source>A trial</source>
        <translation>Ein Versuch</translation>
    </message>
    <message>
        <source>A trial proves detection on your own machine: a known mass, a bearing with a defect made on purpose, a slackened bolt. The effect to expect is computed and frozen before anything is changed; then recordings before and after are weighed against it.</source>
        <translation>Ein Versuch weist die Erkennung an der eigenen Maschine nach: eine bekannte Masse, ein absichtlich beschädigtes Lager, eine gelöste Schraube. Die zu erwartende Wirkung wird berechnet und festgeschrieben, bevor etwas geändert wird; dann werden Aufzeichnungen davor und danach daran gemessen.</translation>
    </message>
    <message>
        <source>Agree stop values first. Never slacken or fit anything on a machine that could start; isolate, lock out and prove dead, and run with every guard fitted.</source>
        <translation>Zuerst Abschaltwerte vereinbaren. Nie an einer Maschine, die anlaufen könnte, etwas lösen oder anbringen; freischalten, sichern, Spannungsfreiheit feststellen und nur mit allen Schutzhauben laufen lassen.</translation>
    </message>
    <message>
        <source>Balancing in place</source>
        <translation>Auswuchten an Ort und Stelle</translation>
    </message>
    <message>
        <source>One or two planes, by influence coefficients from amplitude and phase, or without phase by four runs. The angle convention is drawn: check it on the machine before the first mass goes on.</source>
        <translation>Ein oder zwei Ebenen, mit Einflusskoeffizienten aus Amplitude und Phase oder ohne Phase mit vier Läufen. Die Winkelzählung ist gezeichnet: an der Maschine prüfen, bevor die erste Masse angebracht wird.</translation>
    </message>
    <message>
        <source>Readings that scatter by more than 10 % or 10 degrees are refused: find out why first. Looseness, a bent shaft, a resonance or a loose build-up cannot be balanced away.</source>
        <translation>Ablesungen, die um mehr als 10 % oder 10 Grad streuen, werden abgewiesen: zuerst die Ursache finden. Losesitz, eine krumme Welle, eine Resonanz oder lose Anbackungen lassen sich nicht wegwuchten.</translation>
    </message>
    <message>
        <source>Secure trial masses against flying off, keep people out of the plane of rotation, and keep guards fitted in every run.</source>
        <translation>Testmassen gegen Wegfliegen sichern, niemanden in der Drehebene dulden und bei jedem Lauf alle Schutzhauben geschlossen halten.</translation>
    </message>
    <message>
        <source>What it cannot see</source>
        <translation>Was es nicht sehen kann</translation>
    </message>
    <message>
        <source>A node on a motor hardly hears the driven machine&apos;s bearings, cavitation or small gears. A cheap node ends at 1 to 3 kHz. Flux has no unit: only ratios and change count. Frame temperature is not winding temperature.</source>
        <translation>Ein Knoten am Motor hört die Lager der Arbeitsmaschine, Kavitation oder kleine Zahnräder kaum. Ein billiger Knoten endet bei 1 bis 3 kHz. Fluss hat keine Einheit: Nur Verhältnisse und Änderungen zählen. Gehäusetemperatur ist nicht Wicklungstemperatur.</translation>
    </message>
    <message>
        <source>Each machine&apos;s own list is in its blind spots, with what would cure each.</source>
        <translation>Die Liste jeder einzelnen Maschine steht bei ihren blinden Flecken, jeweils mit der Abhilfe.</translation>
    </message>
</context>
<context>
    <name>JobText</name>
    <message>
        <source>Job %1 of %2: %3</source>
        <translation>Auftrag %1 (%2): %3</translation>
    </message>
    <message>
        <source>Revision %1, replaces job %2</source>
        <translation>Revision %1, ersetzt Auftrag %2</translation>
    </message>
    <message>
        <source>order parts by %1</source>
        <translation>Teile bestellen bis %1</translation>
    </message>
    <message>
        <source>do not run beyond %1</source>
        <translation>nicht weiterfahren über %1</translation>
    </message>
    <message>
        <source>planned stop %1</source>
        <translation>geplanter Stillstand %1</translation>
    </message>
    <message>
        <source>work order %1</source>
        <translation>Arbeitsauftrag-Nr. %1</translation>
    </message>
    <message>
        <source>Verification: it is not known when the work was done. Move the job on to &quot;done&quot; and say the day.</source>
        <translation>Nachweis: nicht bekannt, wann die Arbeit erledigt wurde. Den Auftrag auf „erledigt“ weiterführen und den Tag angeben.</translation>
    </message>
    <message>
        <source>Done on %1 (%2).</source>
        <translation>Erledigt am %1 (%2).</translation>
    </message>
    <message>
        <source>Verification: &lt;b&gt;%1&lt;/b&gt;. %2</source>
        <translation>Nachweis: &lt;b&gt;%1&lt;/b&gt;. %2</translation>
    </message>
    <message>
        <source>Verification: %1.</source>
        <translation>Nachweis: %1.</translation>
    </message>
    <message>
        <source>confirmed</source>
        <translation>bestätigt</translation>
    </message>
    <message>
        <source>another fault</source>
        <translation>anderer Fehler</translation>
    </message>
    <message>
        <source>nothing found</source>
        <translation>nichts gefunden</translation>
    </message>
    <message>
        <source>not opened</source>
        <translation>nicht geöffnet</translation>
    </message>
    <message>
        <source>Report of %1 by %2: &lt;b&gt;%3&lt;/b&gt;, %4</source>
        <translation>Rückmeldung vom %1 von %2: &lt;b&gt;%3&lt;/b&gt;, %4</translation>
    </message>
</context>
<context>
    <name>Jobs</name>
    <message>
        <source>%1 (already in job %2)</source>
        <translation>%1 (schon in Auftrag %2)</translation>
    </message>
    <message>
        <source>drafted</source>
        <translation>entworfen</translation>
    </message>
    <message>
        <source>issued</source>
        <translation>erteilt</translation>
    </message>
    <message>
        <source>scheduled</source>
        <translation>terminiert</translation>
    </message>
    <message>
        <source>done</source>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>verified</source>
        <translation>nachgewiesen</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>abgeschlossen</translation>
    </message>
</context>
<context>
    <name>Libraries</name>
    <message>
        <source>window, print</source>
        <translation>Fenster, Druck</translation>
    </message>
    <message>
        <source>LGPL 3</source>
        <translation>LGPL 3</translation>
    </message>
    <message>
        <source>plots</source>
        <translation>Diagramme</translation>
    </message>
    <message>
        <source>Qwt licence 1.0 (LGPL 2.1 with exceptions)</source>
        <translation>Qwt-Lizenz 1.0 (LGPL 2.1 mit Ausnahmen)</translation>
    </message>
    <message>
        <source>the fleet file</source>
        <translation>die Flottendatei</translation>
    </message>
    <message>
        <source>public domain</source>
        <translation>gemeinfrei</translation>
    </message>
    <message>
        <source>Fourier transforms</source>
        <translation>Fourier-Transformationen</translation>
    </message>
    <message>
        <source>GPL 2 or later</source>
        <translation>GPL 2 oder später</translation>
    </message>
    <message>
        <source>MAT files</source>
        <translation>MAT-Dateien</translation>
    </message>
    <message>
        <source>HDF5 files</source>
        <translation>HDF5-Dateien</translation>
    </message>
    <message>
        <source>WAV and FLAC</source>
        <translation>WAV und FLAC</translation>
    </message>
    <message>
        <source>LGPL 2.1 or later</source>
        <translation>LGPL 2.1 oder später</translation>
    </message>
    <message>
        <source>compression of waveforms</source>
        <translation>Verdichtung der Zeitsignale</translation>
    </message>
    <message>
        <source>BSD</source>
        <translation>BSD</translation>
    </message>
    <message>
        <source>checksums</source>
        <translation>Prüfsummen</translation>
    </message>
    <message>
        <source>JSON</source>
        <translation>JSON</translation>
    </message>
    <message>
        <source>MIT</source>
        <translation>MIT</translation>
    </message>
    <message>
        <source>text</source>
        <translation>Text</translation>
    </message>
    <message>
        <source>errors as values</source>
        <translation>Fehler als Werte</translation>
    </message>
    <message>
        <source>CC0</source>
        <translation>CC0</translation>
    </message>
    <message>
        <source>command line</source>
        <translation>Befehlszeile</translation>
    </message>
    <message>
        <source>time zones</source>
        <translation>Zeitzonen</translation>
    </message>
    <message>
        <source>JSON of a whole week</source>
        <translation>JSON einer ganzen Woche</translation>
    </message>
    <message>
        <source>Apache 2.0</source>
        <translation>Apache 2.0</translation>
    </message>
    <message>
        <source>mail</source>
        <translation>Mail</translation>
    </message>
    <message>
        <source>curl licence (MIT-like)</source>
        <translation>curl-Lizenz (MIT-ähnlich)</translation>
    </message>
</context>
<context>
    <name>Nameplate</name>
    <message>
        <source>induction motor</source>
        <translation>Asynchronmotor</translation>
    </message>
    <message>
        <source>wound-rotor motor</source>
        <translation>Schleifringläufermotor</translation>
    </message>
    <message>
        <source>two-speed motor</source>
        <translation>polumschaltbarer Motor</translation>
    </message>
    <message>
        <source>permanent-magnet motor</source>
        <translation>Permanentmagnetmotor</translation>
    </message>
    <message>
        <source>reluctance motor</source>
        <translation>Reluktanzmotor</translation>
    </message>
    <message>
        <source>%1 poles</source>
        <translation>%1 Pole</translation>
    </message>
    <message>
        <source>on inverter</source>
        <translation>am Umrichter</translation>
    </message>
    <message>
        <source>driven machine</source>
        <translation>Arbeitsmaschine</translation>
    </message>
    <message>
        <source>%1 blades</source>
        <translation>%1 Schaufeln</translation>
    </message>
    <message>
        <source>gear %1</source>
        <translation>Zahnradpaar %1</translation>
    </message>
    <message>
        <source>belt %1</source>
        <translation>Riemen %1</translation>
    </message>
    <message>
        <source>%1 coupling</source>
        <translation>Kupplung: %1</translation>
    </message>
</context>
<context>
    <name>QObject</name>
    <message>
        <source>Findings sheets, round to %1</source>
        <translation>Befundblätter, Runde bis %1</translation>
    </message>
</context>
<context>
    <name>RetentionWords</name>
    <message>
        <source>Waveforms</source>
        <translation>Zeitsignale</translation>
    </message>
    <message>
        <source>Spectra</source>
        <translation>Spektren</translation>
    </message>
    <message>
        <source>Examinations</source>
        <translation>Auswertungen</translation>
    </message>
    <message>
        <source>not old enough yet</source>
        <translation>noch nicht alt genug</translation>
    </message>
    <message>
        <source>a round stands on it</source>
        <translation>eine Runde stützt sich darauf</translation>
    </message>
    <message>
        <source>a finding or an alert stands on it</source>
        <translation>ein Befund oder eine Meldung stützt sich darauf</translation>
    </message>
    <message>
        <source>the baseline stands on it</source>
        <translation>das Ausgangsband stützt sich darauf</translation>
    </message>
    <message>
        <source>a trial stands on it</source>
        <translation>ein Versuch stützt sich darauf</translation>
    </message>
    <message>
        <source>a balancing stands on it</source>
        <translation>ein Auswuchten stützt sich darauf</translation>
    </message>
    <message>
        <source>the verification of a job stands on it</source>
        <translation>der Nachweis eines Auftrags stützt sich darauf</translation>
    </message>
    <message>
        <source>next to an event, a report or a job</source>
        <translation>neben einem Ereignis, einer Rückmeldung oder einem Auftrag</translation>
    </message>
    <message>
        <source>answers what was asked for</source>
        <translation>beantwortet, was verlangt war</translation>
    </message>
    <message>
        <source>something of its file was refused and is not answered</source>
        <translation>etwas aus ihrer Datei wurde abgelehnt und ist nicht beantwortet</translation>
    </message>
    <message>
        <source>the strongest of its day</source>
        <translation>die stärkste ihres Tages</translation>
    </message>
    <message>
        <source>the strongest of its week</source>
        <translation>die stärkste ihrer Woche</translation>
    </message>
    <message>
        <source>A machine&apos;s year at the rate of its last 30 days takes about %1: waveforms %2, spectra %3, examinations %4, for ever %5.</source>
        <translation>Ein Jahr einer Maschine braucht nach den letzten 30 Tagen etwa %1: Zeitsignale %2, Spektren %3, Auswertungen %4, für immer %5.</translation>
    </message>
    <message>
        <source>The file takes %1; %2 of it are free.</source>
        <translation>Die Datei braucht %1; davon sind %2 frei.</translation>
    </message>
    <message>
        <source>The file takes %1; %2 of it are free. It was made before free space could be given back to the disk bit by bit: compacting does it once.</source>
        <translation>Die Datei braucht %1; davon sind %2 frei. Sie entstand, bevor freier Platz nach und nach an die Platte zurückgehen konnte: Verdichten holt das einmal nach.</translation>
    </message>
    <message>
        <source>Free space</source>
        <translation>Freier Platz</translation>
    </message>
</context>
<context>
    <name>SaveFile</name>
    <message>
        <source>%1 is the fleet file or a part of it and is left as it is.</source>
        <translation>%1 ist die Flottendatei oder ein Teil davon und bleibt unverändert.</translation>
    </message>
</context>
<context>
    <name>Sheet</name>
    <message>
        <source>dB below the line</source>
        <translation>dB unter der Linie</translation>
    </message>
    <message>
        <source>Findings sheet %1: %2</source>
        <translation>Befundblatt %1: %2</translation>
    </message>
</context>
<context>
    <name>Shortcuts</name>
    <message>
        <source>Everywhere</source>
        <translation>Überall</translation>
    </message>
    <message>
        <source>Round page, in the ledger</source>
        <translation>Seite Runde, in der Liste</translation>
    </message>
    <message>
        <source>Register page</source>
        <translation>Seite Stammdaten</translation>
    </message>
    <message>
        <source>Machine page</source>
        <translation>Seite Maschine</translation>
    </message>
    <message>
        <source>In a plot</source>
        <translation>In einem Diagramm</translation>
    </message>
    <message>
        <source>&amp;New fleet…</source>
        <translation>&amp;Neue Flotte…</translation>
    </message>
    <message>
        <source>&amp;Open fleet…</source>
        <translation>Flotte &amp;öffnen…</translation>
    </message>
    <message>
        <source>&amp;Import recordings…</source>
        <translation>Aufzeichnungen &amp;einlesen…</translation>
    </message>
    <message>
        <source>R&amp;ules for reading files…</source>
        <translation>&amp;Regeln zum Lesen von Dateien…</translation>
    </message>
    <message>
        <source>Re&amp;tention…</source>
        <translation>&amp;Aufbewahrung…</translation>
    </message>
    <message>
        <source>&amp;Back up…</source>
        <translation>&amp;Sichern…</translation>
    </message>
    <message>
        <source>Import e&amp;vents…</source>
        <translation>Ereignisse ein&amp;lesen…</translation>
    </message>
    <message>
        <source>&amp;Preferences…</source>
        <translation>E&amp;instellungen…</translation>
    </message>
    <message>
        <source>&amp;Quit</source>
        <translation>&amp;Beenden</translation>
    </message>
    <message>
        <source>&amp;Round</source>
        <translation>&amp;Runde</translation>
    </message>
    <message>
        <source>&amp;Machine</source>
        <translation>&amp;Maschine</translation>
    </message>
    <message>
        <source>Re&amp;gister</source>
        <translation>&amp;Stammdaten</translation>
    </message>
    <message>
        <source>&amp;Open a round…</source>
        <translation>Runde &amp;öffnen…</translation>
    </message>
    <message>
        <source>&amp;Close the round…</source>
        <translation>Runde ab&amp;schließen…</translation>
    </message>
    <message>
        <source>Round re&amp;port…</source>
        <translation>Runden&amp;bericht…</translation>
    </message>
    <message>
        <source>&amp;Findings sheets of the round…</source>
        <translation>Be&amp;fundblätter der Runde…</translation>
    </message>
    <message>
        <source>Co&amp;mpare two rounds…</source>
        <translation>Zwei Runden &amp;vergleichen…</translation>
    </message>
    <message>
        <source>What is &amp;asked for…</source>
        <translation>An&amp;gefordertes…</translation>
    </message>
    <message>
        <source>Refuse&amp;d files…</source>
        <translation>Abge&amp;wiesene Dateien…</translation>
    </message>
    <message>
        <source>&amp;Jobs…</source>
        <translation>&amp;Aufträge…</translation>
    </message>
    <message>
        <source>&amp;Jobs of the machine…</source>
        <translation>&amp;Aufträge der Maschine…</translation>
    </message>
    <message>
        <source>&amp;History…</source>
        <translation>&amp;Historie…</translation>
    </message>
    <message>
        <source>&amp;Before and after…</source>
        <translation>&amp;Vorher und nachher…</translation>
    </message>
    <message>
        <source>Ne&amp;w baseline…</source>
        <translation>&amp;Neues Ausgangsband…</translation>
    </message>
    <message>
        <source>&amp;Note or event…</source>
        <translation>Notiz oder &amp;Ereignis…</translation>
    </message>
    <message>
        <source>Findings &amp;sheet…</source>
        <translation>&amp;Befundblatt…</translation>
    </message>
    <message>
        <source>Ba&amp;lance…</source>
        <translation>Aus&amp;wuchten…</translation>
    </message>
    <message>
        <source>Seeded-fault &amp;trials…</source>
        <translation>Versuche mit eingebrachtem &amp;Fehler…</translation>
    </message>
    <message>
        <source>&amp;Resonance map…</source>
        <translation>&amp;Resonanzkarte…</translation>
    </message>
    <message>
        <source>&amp;Find a bearing…</source>
        <translation>&amp;Lager suchen…</translation>
    </message>
    <message>
        <source>Lar&amp;ger</source>
        <translation>&amp;Größer</translation>
    </message>
    <message>
        <source>S&amp;maller</source>
        <translation>&amp;Kleiner</translation>
    </message>
    <message>
        <source>&amp;100 %</source>
        <translation>&amp;100 %</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;Keys</source>
        <translation>&amp;Tasten</translation>
    </message>
    <message>
        <source>&amp;About Fettle</source>
        <translation>&amp;Über Fettle</translation>
    </message>
    <message>
        <source>&amp;Open the machine</source>
        <translation>Maschine &amp;öffnen</translation>
    </message>
    <message>
        <source>&amp;Accept</source>
        <translation>&amp;Annehmen</translation>
    </message>
    <message>
        <source>&amp;Dispute…</source>
        <translation>&amp;Bestreiten…</translation>
    </message>
    <message>
        <source>De&amp;fer…</source>
        <translation>&amp;Verschieben…</translation>
    </message>
    <message>
        <source>&amp;Why unseen…</source>
        <translation>&amp;Warum ungesehen…</translation>
    </message>
    <message>
        <source>&amp;Next undecided</source>
        <translation>&amp;Nächste offene</translation>
    </message>
    <message>
        <source>Accept all to &amp;leave</source>
        <translation>Alle zu be&amp;lassenden annehmen</translation>
    </message>
    <message>
        <source>&amp;Take back</source>
        <translation>&amp;Zurücknehmen</translation>
    </message>
    <message>
        <source>What comes &amp;before the list, and back</source>
        <translation>Was vor der Liste &amp;kommt, und zurück</translation>
    </message>
    <message>
        <source>&amp;Sort by the next column</source>
        <translation>Nach der nächsten Spalte &amp;sortieren</translation>
    </message>
    <message>
        <source>Sort the other way &amp;round</source>
        <translation>&amp;Umgekehrt sortieren</translation>
    </message>
    <message>
        <source>Group by something else</source>
        <translation>Anders gruppieren</translation>
    </message>
    <message>
        <source>The round before</source>
        <translation>Vorige Runde</translation>
    </message>
    <message>
        <source>The round after</source>
        <translation>Nächste Runde</translation>
    </message>
    <message>
        <source>Fold or unfold the group</source>
        <translation>Gruppe ein- oder ausklappen</translation>
    </message>
    <message>
        <source>Filter by text</source>
        <translation>Nach Text filtern</translation>
    </message>
    <message>
        <source>&amp;Twins and train</source>
        <translation>S&amp;chwestermaschinen und Strang</translation>
    </message>
    <message>
        <source>Twins and train, the one before</source>
        <translation>Schwestermaschinen und Strang, vorige</translation>
    </message>
    <message>
        <source>Keep as &amp;reference</source>
        <translation>Als &amp;Referenz behalten</translation>
    </message>
    <message>
        <source>Show one &amp;day</source>
        <translation>Einen &amp;Tag zeigen</translation>
    </message>
    <message>
        <source>Show one &amp;week</source>
        <translation>Eine &amp;Woche zeigen</translation>
    </message>
    <message>
        <source>Show one &amp;month</source>
        <translation>Einen &amp;Monat zeigen</translation>
    </message>
    <message>
        <source>Show &amp;six months</source>
        <translation>&amp;Sechs Monate zeigen</translation>
    </message>
    <message>
        <source>Show &amp;all of time</source>
        <translation>&amp;Alles zeigen</translation>
    </message>
    <message>
        <source>Waterfall in &amp;colours or as traces</source>
        <translation>Wasserfall in &amp;Farben oder als Kurven</translation>
    </message>
    <message>
        <source>&amp;Copy as picture</source>
        <translation>Als &amp;Bild kopieren</translation>
    </message>
    <message>
        <source>Copy as &amp;table, as shown</source>
        <translation>Als Tabelle &amp;kopieren, wie gezeigt</translation>
    </message>
    <message>
        <source>&amp;Save the plot as…</source>
        <translation>&amp;Diagramm speichern als…</translation>
    </message>
    <message>
        <source>&amp;Save</source>
        <translation>&amp;Speichern</translation>
    </message>
    <message>
        <source>&amp;New machine</source>
        <translation>&amp;Neue Maschine</translation>
    </message>
    <message>
        <source>&amp;Duplicate</source>
        <translation>&amp;Duplizieren</translation>
    </message>
    <message>
        <source>&amp;Remove…</source>
        <translation>Ent&amp;fernen…</translation>
    </message>
    <message>
        <source>&amp;Import…</source>
        <translation>&amp;Einlesen…</translation>
    </message>
    <message>
        <source>&amp;Export…</source>
        <translation>&amp;Ausgeben…</translation>
    </message>
    <message>
        <source>&amp;Undo</source>
        <translation>&amp;Rückgängig</translation>
    </message>
    <message>
        <source>&amp;Redo</source>
        <translation>&amp;Wiederholen</translation>
    </message>
    <message>
        <source>Set for &amp;several…</source>
        <translation>Für &amp;mehrere setzen…</translation>
    </message>
    <message>
        <source>Find a machine</source>
        <translation>Maschine suchen</translation>
    </message>
    <message>
        <source>&amp;Weigh again…</source>
        <translation>Neu &amp;wägen…</translation>
    </message>
    <message>
        <source>A&amp;lerts…</source>
        <translation>Alar&amp;me…</translation>
    </message>
    <message>
        <source>Twins and train below each other</source>
        <translation>Schwestermaschinen und Strang untereinander</translation>
    </message>
    <message>
        <source>Find a &amp;bearing…</source>
        <translation>Lager &amp;finden…</translation>
    </message>
</context>
<context>
    <name>SiteTime</name>
    <message>
        <source>d MMMM yyyy HH:mm</source>
        <translation>d. MMMM yyyy HH:mm</translation>
    </message>
</context>
<context>
    <name>Urgency</name>
    <message>
        <source>leave</source>
        <translation>belassen</translation>
    </message>
    <message>
        <source>watch</source>
        <translation>beobachten</translation>
    </message>
    <message>
        <source>plan</source>
        <translation>einplanen</translation>
    </message>
    <message>
        <source>act</source>
        <translation>handeln</translation>
    </message>
    <message>
        <source>unseen</source>
        <translation>ungesehen</translation>
    </message>
</context>
<context>
    <name>fettle</name>
    <message>
        <source>1  Cautions</source>
        <translation>1  Warnhinweise</translation>
    </message>
    <message>
        <source>2  Rotor</source>
        <translation>2  Rotor</translation>
    </message>
    <message>
        <source>3  Runs</source>
        <translation>3  Läufe</translation>
    </message>
    <message>
        <source>4  Masses</source>
        <translation>4  Massen</translation>
    </message>
    <message>
        <source>5  Record</source>
        <translation>5  Protokoll</translation>
    </message>
    <message>
        <source>read</source>
        <translation>gelesen</translation>
    </message>
    <message>
        <source>to be read</source>
        <translation>zu lesen</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgewiesen</translation>
    </message>
    <message>
        <source>wanting</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>complete</source>
        <translation>vollständig</translation>
    </message>
    <message>
        <source>told</source>
        <translation>angegeben</translation>
    </message>
    <message>
        <source>not yet</source>
        <translation>noch nicht</translation>
    </message>
    <message>
        <source>closed</source>
        <translation>abgeschlossen</translation>
    </message>
    <message>
        <source>in work</source>
        <translation>in Arbeit</translation>
    </message>
    <message>
        <source>Steps</source>
        <translation>Schritte</translation>
    </message>
    <message>
        <source>Cautions</source>
        <translation>Warnhinweise</translation>
    </message>
    <message>
        <source>Before anything turns</source>
        <translation>Bevor sich etwas dreht</translation>
    </message>
    <message>
        <source>I have &amp;read this, and I may balance here</source>
        <translation>&amp;Gelesen; ich darf hier auswuchten</translation>
    </message>
    <message>
        <source>The other steps open when this is ticked</source>
        <translation>Mit diesem Haken öffnen sich die übrigen Schritte</translation>
    </message>
    <message>
        <source>came on the list</source>
        <translation>neu auf der Liste</translation>
    </message>
    <message>
        <source>more urgent</source>
        <translation>dringlicher</translation>
    </message>
    <message>
        <source>no longer seen</source>
        <translation>nicht mehr gesehen</translation>
    </message>
    <message>
        <source>less urgent</source>
        <translation>weniger dringlich</translation>
    </message>
    <message>
        <source>left the list</source>
        <translation>von der Liste genommen</translation>
    </message>
    <message>
        <source>seen again</source>
        <translation>wieder gesehen</translation>
    </message>
    <message>
        <source>new in the register</source>
        <translation>neu in den Stammdaten</translation>
    </message>
    <message>
        <source>gone from the round</source>
        <translation>nicht mehr in der Runde</translation>
    </message>
    <message>
        <source>stayed</source>
        <translation>geblieben</translation>
    </message>
    <message>
        <source>to be verified</source>
        <translation>nachzuweisen</translation>
    </message>
    <message>
        <source>overdue</source>
        <translation>überfällig</translation>
    </message>
    <message>
        <source>put off, due now</source>
        <translation>verschoben, jetzt fällig</translation>
    </message>
    <message>
        <source>late recordings</source>
        <translation>späte Aufzeichnungen</translation>
    </message>
    <message>
        <source>for production</source>
        <translation>für die Produktion</translation>
    </message>
    <message>
        <source>for the engineer</source>
        <translation>für den Ingenieur</translation>
    </message>
    <message>
        <source>for whoever keeps the sensors</source>
        <translation>für die Sensorbetreuung</translation>
    </message>
    <message>
        <source>%1, now %2</source>
        <translation>%1, jetzt %2</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 to %2 %3</source>
        <translation>%1 bis %2 %3</translation>
    </message>
    <message>
        <source>%1 (%2 x, %3 Hz)</source>
        <translation>%1 (%2 x, %3 Hz)</translation>
    </message>
    <message>
        <source>%1 (%2 x)</source>
        <translation>%1 (%2 x)</translation>
    </message>
    <message>
        <source>unbalance added</source>
        <translation>zugefügte Unwucht</translation>
    </message>
    <message>
        <source>%1 g mm</source>
        <translation>%1 g mm</translation>
    </message>
    <message>
        <source>force, turning</source>
        <translation>Kraft, umlaufend</translation>
    </message>
    <message>
        <source>%1 N, %2 % of the rotor&apos;s weight</source>
        <translation>%1 N, %2 % des Rotorgewichts</translation>
    </message>
    <message>
        <source>%1 N</source>
        <translation>%1 N</translation>
    </message>
    <message>
        <source>equals the grade</source>
        <translation>entspricht der Gütestufe</translation>
    </message>
    <message>
        <source>G %1 by itself</source>
        <translation>für sich allein G %1</translation>
    </message>
    <message>
        <source>allowed for %1</source>
        <translation>zulässig für %1</translation>
    </message>
    <message>
        <source>%1 g mm: %2 g at this radius</source>
        <translation>%1 g mm: %2 g auf diesem Radius</translation>
    </message>
    <message>
        <source>mass at a radius</source>
        <translation>Masse auf einem Radius</translation>
    </message>
    <message>
        <source>bearing with a known defect</source>
        <translation>Lager mit bekanntem Schaden</translation>
    </message>
    <message>
        <source>bolt slackened at rest</source>
        <translation>im Stillstand gelöste Schraube</translation>
    </message>
    <message>
        <source>something else</source>
        <translation>etwas anderes</translation>
    </message>
    <message>
        <source>outer race</source>
        <translation>Außenring</translation>
    </message>
    <message>
        <source>inner race</source>
        <translation>Innenring</translation>
    </message>
    <message>
        <source>rolling element</source>
        <translation>Wälzkörper</translation>
    </message>
    <message>
        <source>cage</source>
        <translation>Käfig</translation>
    </message>
    <message>
        <source>1x of a channel</source>
        <translation>1x eines Kanals</translation>
    </message>
    <message>
        <source>overall velocity of a channel</source>
        <translation>Gesamt-Schwinggeschwindigkeit eines Kanals</translation>
    </message>
    <message>
        <source>looseness of a channel</source>
        <translation>Losesitz eines Kanals</translation>
    </message>
    <message>
        <source>the weight of a bearing fault</source>
        <translation>Gewicht eines Lagerschadens</translation>
    </message>
    <message>
        <source>passed</source>
        <translation>bestanden</translation>
    </message>
    <message>
        <source>failed</source>
        <translation>nicht bestanden</translation>
    </message>
    <message>
        <source>not decided yet</source>
        <translation>noch nicht entschieden</translation>
    </message>
    <message>
        <source>not comparable</source>
        <translation>nicht vergleichbar</translation>
    </message>
    <message>
        <source>kept</source>
        <translation>gehalten</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>nicht gehalten</translation>
    </message>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>changed, recordings come in</source>
        <translation>geändert, Aufzeichnungen gehen ein</translation>
    </message>
    <message>
        <source>started, promise frozen</source>
        <translation>begonnen, Zusage eingefroren</translation>
    </message>
    <message>
        <source>planned</source>
        <translation>geplant</translation>
    </message>
    <message>
        <source>%1 g at %2 mm, %3</source>
        <translation>%1 g bei %2 mm, %3</translation>
    </message>
    <message>
        <source>defect made on purpose: %1, %2</source>
        <translation>absichtlicher Schaden: %1, %2</translation>
    </message>
    <message>
        <source>bolt slackened, %1</source>
        <translation>Schraube gelöst, %1</translation>
    </message>
    <message>
        <source>speed of this shaft</source>
        <translation>Drehzahl dieser Welle</translation>
    </message>
    <message>
        <source>%1 r/min</source>
        <translation>%1 r/min</translation>
    </message>
    <message>
        <source>moves 1x by</source>
        <translation>verschiebt 1x um</translation>
    </message>
    <message>
        <source>1x before</source>
        <translation>1x vorher</translation>
    </message>
    <message>
        <source>1x afterwards</source>
        <translation>1x nachher</translation>
    </message>
    <message>
        <source>lines to appear</source>
        <translation>erwartete Linien</translation>
    </message>
    <message>
        <source>silent: the node sends nothing</source>
        <translation>stumm: der Knoten sendet nichts</translation>
    </message>
    <message>
        <source>low battery</source>
        <translation>Batterie schwach</translation>
    </message>
    <message>
        <source>poor data: recordings fail the sensor checks</source>
        <translation>schlechte Daten: Aufzeichnungen bestehen die Sensorprüfungen nicht</translation>
    </message>
    <message>
        <source>moved: the node is not on this machine</source>
        <translation>versetzt: der Knoten sitzt nicht an dieser Maschine</translation>
    </message>
    <message>
        <source>idle: the machine does not run</source>
        <translation>außer Betrieb: die Maschine läuft nicht</translation>
    </message>
    <message>
        <source>not fitted: no node on this machine</source>
        <translation>nicht angebaut: kein Knoten an dieser Maschine</translation>
    </message>
    <message>
        <source>not judged: nothing to weigh, no limit applies</source>
        <translation>nicht beurteilt: nichts zu wägen, keine Grenze gilt</translation>
    </message>
    <message>
        <source>note</source>
        <translation>Notiz</translation>
    </message>
    <message>
        <source>repair</source>
        <translation>Reparatur</translation>
    </message>
    <message>
        <source>greasing</source>
        <translation>Schmierung</translation>
    </message>
    <message>
        <source>part replaced</source>
        <translation>Teil ersetzt</translation>
    </message>
    <message>
        <source>cleaning</source>
        <translation>Reinigung</translation>
    </message>
    <message>
        <source>inspection</source>
        <translation>Inspektion</translation>
    </message>
    <message>
        <source>node moved</source>
        <translation>Knoten versetzt</translation>
    </message>
    <message>
        <source>node&apos;s battery low</source>
        <translation>Knotenbatterie schwach</translation>
    </message>
    <message>
        <source>new baseline from here</source>
        <translation>neue Ausgangszeit ab hier</translation>
    </message>
    <message>
        <source>other</source>
        <translation>Sonstiges</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>d MMMM yyyy</source>
        <extracomment>a date as it is written; see QDate::toString</extracomment>
        <translation>d. MMMM yyyy</translation>
    </message>
    <message>
        <source>now</source>
        <translation>jetzt</translation>
    </message>
    <message>
        <source>%1 min</source>
        <translation>%1 min</translation>
    </message>
    <message>
        <source>%1 h</source>
        <translation>%1 h</translation>
    </message>
    <message>
        <source>%1 d</source>
        <translation>%1 d</translation>
    </message>
    <message>
        <source>%1 weeks</source>
        <translation>%1 Wochen</translation>
    </message>
    <message>
        <source>accepted</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>undecided again</source>
        <translation>wieder offen</translation>
    </message>
    <message>
        <source>disputed</source>
        <translation>bestritten</translation>
    </message>
    <message>
        <source>deferred to %1</source>
        <translation>verschoben auf %1</translation>
    </message>
    <message>
        <source>a false alarm in %1 days on average</source>
        <translation>im Mittel ein Fehlalarm in %1 Tagen</translation>
    </message>
    <message>
        <source>EWMA</source>
        <translation>EWMA</translation>
    </message>
    <message>
        <source>EWMA low</source>
        <translation>EWMA unten</translation>
    </message>
    <message>
        <source>EWMA high</source>
        <translation>EWMA oben</translation>
    </message>
    <message>
        <source>EWMA of daily medians, lambda %1, limits at %2 sigma: one false alarm in %3 days on average.</source>
        <translation>EWMA der Tagesmediane, Lambda %1, Grenzen bei %2 Sigma: im Mittel ein Fehlalarm in %3 Tagen.</translation>
    </message>
    <message>
        <source>CUSUM up</source>
        <translation>CUSUM aufwärts</translation>
    </message>
    <message>
        <source>sigma</source>
        <translation>Sigma</translation>
    </message>
    <message>
        <source>CUSUM down</source>
        <translation>CUSUM abwärts</translation>
    </message>
    <message>
        <source>decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>CUSUM of daily medians, k %1, h %2 sigma: one false alarm in %3 days on average.</source>
        <translation>CUSUM der Tagesmediane, k %1, h %2 Sigma: im Mittel ein Fehlalarm in %3 Tagen.</translation>
    </message>
    <message>
        <source>no control chart: no spread</source>
        <translation>keine Regelkarte: keine Streuung</translation>
    </message>
    <message>
        <source>Leaves with the machine&apos;s own stops in %1 of %2; by chance alone: %3.</source>
        <translation>Verschwindet mit den eigenen Stillständen der Maschine in %1 von %2; durch Zufall allein: %3.</translation>
    </message>
    <message>
        <source>Leaves with %1 in %2 of %3 stops; by chance alone: %4.</source>
        <translation>Verschwindet mit %1 in %2 von %3 Stillständen; durch Zufall allein: %4.</translation>
    </message>
    <message>
        <source>%1: nothing was recorded since the event before it.</source>
        <translation>%1: seit dem Ereignis davor wurde nichts aufgezeichnet.</translation>
    </message>
    <message>
        <source>%1: the rule would not have listed it at any of the %2 week ends from %3.</source>
        <translation>%1: die Regel hätte es an keinem der %2 Wochenschlüsse ab %3 aufgeführt.</translation>
    </message>
    <message>
        <source>%1: the rule would first have listed it on %2, %3 days before (%4), and at %5 of %6 week ends from then on.</source>
        <translation>%1: die Regel hätte es zuerst am %2 aufgeführt, %3 Tage vorher (%4), und von da an zu %5 von %6 Wochenschlüssen.</translation>
    </message>
    <message>
        <source>%1 %2 on %3: there in %4 of %5 recordings.</source>
        <translation>%1 %2 an %3: in %4 von %5 Aufzeichnungen vorhanden.</translation>
    </message>
    <message>
        <source>A line of its own stands in the same cells (%1), so nothing from elsewhere can be parted from it here.</source>
        <translation>In denselben Zellen steht eine eigene Linie (%1); Fremdes lässt sich hier daher nicht davon trennen.</translation>
    </message>
    <message>
        <source>No stop of this machine or its neighbours tells whose it is.</source>
        <translation>Kein Stillstand dieser Maschine oder ihrer Nachbarn zeigt, wessen sie ist.</translation>
    </message>
    <message>
        <source>Nothing was recorded yet.</source>
        <translation>Noch nichts aufgezeichnet.</translation>
    </message>
    <message>
        <source>, indicative</source>
        <translation>, indikativ</translation>
    </message>
    <message>
        <source>, a note only</source>
        <translation>, nur eine Notiz</translation>
    </message>
    <message>
        <source>Baseline: %1 days from %2 to %3, %4; its band is two spreads to either side.</source>
        <translation>Ausgangszeit: %1 Tage von %2 bis %3, %4; das Ausgangsband reicht zwei Streuungen nach beiden Seiten.</translation>
    </message>
    <message>
        <source> Own limits: mean + 3 s %1, log-normal %2, median + 3 MAD %3, 95 % of days %4, tolerance 95/95 %5.</source>
        <translation> Eigene Grenzen: Mittelwert + 3 s %1, lognormal %2, Median + 3 MAD %3, 95 % der Tage %4, Toleranz 95/95 %5.</translation>
    </message>
    <message>
        <source> Apart since %1.</source>
        <translation> Abweichend seit %1.</translation>
    </message>
    <message>
        <source>temperature rise over ambient</source>
        <translation>Übertemperatur gegen Umgebung</translation>
    </message>
    <message>
        <source>decibans</source>
        <translation>Deziban</translation>
    </message>
    <message>
        <source>velocity r.m.s.</source>
        <translation>Schwinggeschwindigkeit eff.</translation>
    </message>
    <message>
        <source>acceleration r.m.s.</source>
        <translation>Beschleunigung eff.</translation>
    </message>
    <message>
        <source>peak</source>
        <translation>Spitze</translation>
    </message>
    <message>
        <source>crest factor</source>
        <translation>Scheitelfaktor</translation>
    </message>
    <message>
        <source>kurtosis</source>
        <translation>Kurtosis</translation>
    </message>
    <message>
        <source>1x</source>
        <translation>1x</translation>
    </message>
    <message>
        <source>2x</source>
        <translation>2x</translation>
    </message>
    <message>
        <source>3x</source>
        <translation>3x</translation>
    </message>
    <message>
        <source>above 1 kHz</source>
        <translation>über 1 kHz</translation>
    </message>
    <message>
        <source>mean value</source>
        <translation>Mittelwert</translation>
    </message>
    <message>
        <source>speed</source>
        <translation>Drehzahl</translation>
    </message>
    <message>
        <source>frame temperature</source>
        <translation>Gehäusetemperatur</translation>
    </message>
    <message>
        <source>ambient temperature</source>
        <translation>Umgebungstemperatur</translation>
    </message>
    <message>
        <source>load</source>
        <translation>Last</translation>
    </message>
    <message>
        <source>Levels of the channel</source>
        <translation>Pegel des Kanals</translation>
    </message>
    <message>
        <source>weight: %1</source>
        <translation>Gewicht: %1</translation>
    </message>
    <message>
        <source>Weights</source>
        <translation>Gewichte</translation>
    </message>
    <message>
        <source>%1, %2 (%3 %4)</source>
        <translation>%1, %2 (%3 %4)</translation>
    </message>
    <message>
        <source>Measures of faults</source>
        <translation>Fehlermaße</translation>
    </message>
    <message>
        <source>uncalibrated</source>
        <translation>unkalibriert</translation>
    </message>
    <message>
        <source>uncalibrated, %1</source>
        <translation>unkalibriert, %1</translation>
    </message>
    <message>
        <source>left out: %1</source>
        <translation>ausgelassen: %1</translation>
    </message>
    <message>
        <source>%1, %2 dB over floor, %3 decibans</source>
        <translation>%1, %2 dB über Grundrauschen, %3 Deziban</translation>
    </message>
    <message>
        <source>Week %1 to %2, running recordings: %3</source>
        <translation>Woche %1 bis %2, Aufzeichnungen in Betrieb: %3</translation>
    </message>
    <message>
        <source>One recording: %1</source>
        <translation>Eine Aufzeichnung: %1</translation>
    </message>
    <message>
        <source>%1x</source>
        <translation>%1x</translation>
    </message>
    <message>
        <source>order %1 of the shaft</source>
        <translation>Ordnung %1 der Welle</translation>
    </message>
    <message>
        <source>2 x mains</source>
        <translation>2 x Netz</translation>
    </message>
    <message>
        <source>twice the mains frequency</source>
        <translation>doppelte Netzfrequenz</translation>
    </message>
    <message>
        <source>sound: %1 spectra, %2 to %3, median and 10 to 90 %, %4 Hz a cell</source>
        <translation>Ausgangsband: %1 Spektren, %2 bis %3, Median und 10 bis 90 %, %4 Hz je Zelle</translation>
    </message>
    <message>
        <source>%1x: %2 by %3 µm peak, longer axis at %4 degrees</source>
        <translation>%1x: %2 mal %3 µm Spitze, längere Achse bei %4 Grad</translation>
    </message>
    <message>
        <source>Unfiltered above %1 Hz, %2 turns from the middle of the recording.</source>
        <translation>Ungefiltert über %1 Hz, %2 Umdrehungen aus der Mitte der Aufzeichnung.</translation>
    </message>
    <message>
        <source>The path runs from %1 towards %2.</source>
        <translation>Die Bahn läuft von %1 nach %2.</translation>
    </message>
    <message>
        <source>The path is nearly a line and runs to and fro.</source>
        <translation>Die Bahn ist fast eine Gerade und läuft hin und her.</translation>
    </message>
    <message>
        <source>The point of this channel is not in the register.</source>
        <translation>Der Messpunkt dieses Kanals steht nicht in den Stammdaten.</translation>
    </message>
    <message>
        <source>No orbit: it needs two radial directions of acceleration at %1, and this recording has %2.</source>
        <translation>Kein Orbit: nötig sind zwei radiale Richtungen der Beschleunigung an %1, diese Aufzeichnung hat %2.</translation>
    </message>
    <message>
        <source>No orbit: the directions were not, or not known to be, recorded at the same moment, so there is no phase between them.</source>
        <translation>Kein Orbit: die Richtungen wurden nicht oder nicht nachweislich gleichzeitig aufgezeichnet, daher keine Phase zwischen ihnen.</translation>
    </message>
    <message>
        <source>No orbit: the shaft&apos;s speed in this recording is not known.</source>
        <translation>Kein Orbit: die Drehzahl der Welle in dieser Aufzeichnung ist nicht bekannt.</translation>
    </message>
    <message>
        <source>No orbit: the two directions have different sample rates or lengths.</source>
        <translation>Kein Orbit: die beiden Richtungen haben verschiedene Abtastraten oder Längen.</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>%1 Hz, likely %2 to %3 Hz, at the farthest %4 to %5 Hz</source>
        <translation>%1 Hz, wahrscheinlich %2 bis %3 Hz, äußerstenfalls %4 bis %5 Hz</translation>
    </message>
    <message>
        <source>twice the mains</source>
        <translation>doppeltes Netz</translation>
    </message>
    <message>
        <source>shaft</source>
        <translation>Welle</translation>
    </message>
    <message>
        <source>pole pass</source>
        <translation>Polschlupf</translation>
    </message>
    <message>
        <source>slower shaft of %1</source>
        <translation>langsamere Welle von %1</translation>
    </message>
    <message>
        <source>cage of %1</source>
        <translation>Käfig von %1</translation>
    </message>
    <message>
        <source>Standby</source>
        <translation>Reserve</translation>
    </message>
    <message>
        <source>another machine can take over</source>
        <translation>eine andere Maschine kann übernehmen</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Tag</source>
        <translation>Kennzeichen</translation>
    </message>
    <message>
        <source>names the machine everywhere; 1 to 100 letters</source>
        <translation>benennt die Maschine überall; 1 bis 100 Zeichen</translation>
    </message>
    <message>
        <source>Asset number</source>
        <translation>Anlagennr.</translation>
    </message>
    <message>
        <source>Service</source>
        <translation>Aufgabe</translation>
    </message>
    <message>
        <source>what it does, in shop words</source>
        <translation>was sie tut, in Werkstattworten</translation>
    </message>
    <message>
        <source>Site</source>
        <translation>Standort</translation>
    </message>
    <message>
        <source>Area</source>
        <translation>Bereich</translation>
    </message>
    <message>
        <source>Criticality</source>
        <translation>Kritikalität</translation>
    </message>
    <message>
        <source>A: stops the works; C: can wait</source>
        <translation>A: legt das Werk still; C: kann warten</translation>
    </message>
    <message>
        <source>Mains</source>
        <translation>Netz</translation>
    </message>
    <message>
        <source>Hz</source>
        <translation>Hz</translation>
    </message>
    <message>
        <source>the site&apos;s grid</source>
        <translation>Netz des Standorts</translation>
    </message>
    <message>
        <source>Support</source>
        <translation>Aufstellung</translation>
    </message>
    <message>
        <source>first natural frequency of machine on its base above (rigid) or below speed</source>
        <translation>erste Eigenfrequenz der Maschine auf ihrer Unterlage über (starr) oder unter der Drehzahl</translation>
    </message>
    <message>
        <source>Coupling and driven machine</source>
        <translation>Kupplung und Arbeitsmaschine</translation>
    </message>
    <message>
        <source>Coupling</source>
        <translation>Kupplung</translation>
    </message>
    <message>
        <source>Driven machine</source>
        <translation>Arbeitsmaschine</translation>
    </message>
    <message>
        <source>Blades or vanes</source>
        <translation>Schaufeln oder Flügel</translation>
    </message>
    <message>
        <source>Speed ratio</source>
        <translation>Drehzahlverhältnis</translation>
    </message>
    <message>
        <source>driven over driver; only where neither gears nor belts give it</source>
        <translation>Arbeitsmaschine zu Antrieb; nur wo weder Zahnradpaare noch Riemen es ergeben</translation>
    </message>
    <message>
        <source>Its half-width</source>
        <translation>Dessen halbe Breite</translation>
    </message>
    <message>
        <source>of 1</source>
        <translation>von 1</translation>
    </message>
    <message>
        <source>Motor, from the nameplate</source>
        <translation>Motor, nach Typenschild</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Power</source>
        <translation>Leistung</translation>
    </message>
    <message>
        <source>kW</source>
        <translation>kW</translation>
    </message>
    <message>
        <source>Poles</source>
        <translation>Pole</translation>
    </message>
    <message>
        <source>poles, not pairs; this or the rated speed is needed</source>
        <translation>Pole, nicht Polpaare; dies oder die Bemessungsdrehzahl ist nötig</translation>
    </message>
    <message>
        <source>Rated speed</source>
        <translation>Bemessungsdrehzahl</translation>
    </message>
    <message>
        <source>r/min</source>
        <translation>r/min</translation>
    </message>
    <message>
        <source>Shaft height</source>
        <translation>Achshöhe</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>IEC frame size</source>
        <translation>IEC-Baugröße</translation>
    </message>
    <message>
        <source>Rotor bars</source>
        <translation>Läuferstäbe</translation>
    </message>
    <message>
        <source>Stator slots</source>
        <translation>Ständernuten</translation>
    </message>
    <message>
        <source>Thermal class</source>
        <translation>Wärmeklasse</translation>
    </message>
    <message>
        <source>IEC 60085</source>
        <translation>IEC 60085</translation>
    </message>
    <message>
        <source>Supply</source>
        <translation>Speisung</translation>
    </message>
    <message>
        <source>Output from</source>
        <translation>Ausgang von</translation>
    </message>
    <message>
        <source>Output to</source>
        <translation>Ausgang bis</translation>
    </message>
    <message>
        <source>Output at rated speed</source>
        <translation>Ausgang bei Bemessungsdrehzahl</translation>
    </message>
    <message>
        <source>Switching frequency</source>
        <translation>Schaltfrequenz</translation>
    </message>
    <message>
        <source>Least speed</source>
        <translation>Kleinste Drehzahl</translation>
    </message>
    <message>
        <source>Most speed</source>
        <translation>Größte Drehzahl</translation>
    </message>
    <message>
        <source>On</source>
        <translation>An</translation>
    </message>
    <message>
        <source>Position</source>
        <translation>Lage</translation>
    </message>
    <message>
        <source>Designation</source>
        <translation>Bezeichnung</translation>
    </message>
    <message>
        <source>ISO; prefixes and suffixes after it are passed over</source>
        <translation>ISO; Vor- und Nachsetzzeichen werden übergangen</translation>
    </message>
    <message>
        <source>Type</source>
        <translation>Typ</translation>
    </message>
    <message>
        <source>What is looked for, in orders</source>
        <translation>Was gesucht wird, in Ordnungen</translation>
    </message>
    <message>
        <source>Elements</source>
        <translation>Wälzkörper</translation>
    </message>
    <message>
        <source>in one row</source>
        <translation>in einer Reihe</translation>
    </message>
    <message>
        <source>Element</source>
        <translation>Wälzkörper-Ø</translation>
    </message>
    <message>
        <source>diameter of a ball or roller</source>
        <translation>Durchmesser einer Kugel oder Rolle</translation>
    </message>
    <message>
        <source>Pitch</source>
        <translation>Teilkreis-Ø</translation>
    </message>
    <message>
        <source>circle through the elements&apos; centres</source>
        <translation>Kreis durch die Mitten der Wälzkörper</translation>
    </message>
    <message>
        <source>Contact</source>
        <translation>Druckwinkel</translation>
    </message>
    <message>
        <source>deg</source>
        <translation>Grad</translation>
    </message>
    <message>
        <source>BPFO</source>
        <translation>BPFO</translation>
    </message>
    <message>
        <source>order of the bearing&apos;s own shaft</source>
        <translation>Ordnung der Welle des Lagers selbst</translation>
    </message>
    <message>
        <source>BPFI</source>
        <translation>BPFI</translation>
    </message>
    <message>
        <source>BSF</source>
        <translation>BSF</translation>
    </message>
    <message>
        <source>spin frequency, not twice it</source>
        <translation>Wälzkörper-Drehfrequenz, nicht das Doppelte</translation>
    </message>
    <message>
        <source>FTF</source>
        <translation>FTF</translation>
    </message>
    <message>
        <source>Rows</source>
        <translation>Reihen</translation>
    </message>
    <message>
        <source>Turning ring</source>
        <translation>Umlauf. Ring</translation>
    </message>
    <message>
        <source>Source</source>
        <translation>Quelle</translation>
    </message>
    <message>
        <source>Shaft</source>
        <translation>Welle</translation>
    </message>
    <message>
        <source>Of</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>Turns at</source>
        <translation>Dreht mit</translation>
    </message>
    <message>
        <source>Gear</source>
        <translation>Zahnradpaar</translation>
    </message>
    <message>
        <source>From shaft</source>
        <translation>Von Welle</translation>
    </message>
    <message>
        <source>To shaft</source>
        <translation>Auf Welle</translation>
    </message>
    <message>
        <source>Teeth on from</source>
        <translation>Zähne (von)</translation>
    </message>
    <message>
        <source>Teeth on to</source>
        <translation>Zähne (auf)</translation>
    </message>
    <message>
        <source>Sun</source>
        <translation>Sonne</translation>
    </message>
    <message>
        <source>Ring</source>
        <translation>Hohlrad</translation>
    </message>
    <message>
        <source>Planet</source>
        <translation>Planet</translation>
    </message>
    <message>
        <source>Planets</source>
        <translation>Planeten</translation>
    </message>
    <message>
        <source>Fixed</source>
        <translation>Fest</translation>
    </message>
    <message>
        <source>Belt</source>
        <translation>Riemen</translation>
    </message>
    <message>
        <source>Pulley on from</source>
        <translation>Scheibe (von)</translation>
    </message>
    <message>
        <source>Pulley on to</source>
        <translation>Scheibe (auf)</translation>
    </message>
    <message>
        <source>Length</source>
        <translation>Länge</translation>
    </message>
    <message>
        <source>Box or stand</source>
        <translation>Gehäuse o. Bock</translation>
    </message>
    <message>
        <source>On shaft</source>
        <translation>Auf Welle</translation>
    </message>
    <message>
        <source>Point</source>
        <translation>Messpunkt</translation>
    </message>
    <message>
        <source>At</source>
        <translation>An</translation>
    </message>
    <message>
        <source>driver, driven or the id of a gear, belt, shaft or box, then perhaps DE or NDE</source>
        <translation>driver, driven oder die Kennung von Zahnradpaar, Riemen, Welle oder Gehäuse, danach ggf. DE oder NDE</translation>
    </message>
    <message>
        <source>Mount</source>
        <translation>Anbauort</translation>
    </message>
    <message>
        <source>Fixing</source>
        <translation>Befestigung</translation>
    </message>
    <message>
        <source>Usable from</source>
        <translation>Nutzbar ab</translation>
    </message>
    <message>
        <source>Usable to</source>
        <translation>Nutzbar bis</translation>
    </message>
    <message>
        <source>Range</source>
        <translation>Messbereich</translation>
    </message>
    <message>
        <source>full scale, in the unit of the channels</source>
        <translation>Vollausschlag, in der Einheit der Kanäle</translation>
    </message>
    <message>
        <source>Noise</source>
        <translation>Rauschen</translation>
    </message>
    <message>
        <source>per root Hz</source>
        <translation>je Wurzel Hz</translation>
    </message>
    <message>
        <source>Every</source>
        <translation>Alle</translation>
    </message>
    <message>
        <source>min</source>
        <translation>min</translation>
    </message>
    <message>
        <source>from one recording to the next</source>
        <translation>von einer Aufzeichnung zur nächsten</translation>
    </message>
    <message>
        <source>Channel</source>
        <translation>Kanal</translation>
    </message>
    <message>
        <source>Quantity</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>Unit</source>
        <translation>Einheit</translation>
    </message>
    <message>
        <source>g, m/s2, mm/s; 1 for flux</source>
        <translation>g, m/s2, mm/s; 1 für Fluss</translation>
    </message>
    <message>
        <source>Direction</source>
        <translation>Richtung</translation>
    </message>
    <message>
        <source>Node</source>
        <translation>Knoten</translation>
    </message>
    <message>
        <source>Fitted from</source>
        <translation>Angebaut ab</translation>
    </message>
    <message>
        <source>2025-11-03; empty: always</source>
        <translation>2025-11-03; leer: immer</translation>
    </message>
    <message>
        <source>To</source>
        <translation>Bis</translation>
    </message>
    <message>
        <source>empty: still there</source>
        <translation>leer: noch dort</translation>
    </message>
    <message>
        <source>by area</source>
        <translation>nach Bereich</translation>
    </message>
    <message>
        <source>by criticality</source>
        <translation>nach Kritikalität</translation>
    </message>
    <message>
        <source>not grouped</source>
        <translation>nicht gruppiert</translation>
    </message>
    <message>
        <source>by urgency</source>
        <translation>nach Dringlichkeit</translation>
    </message>
    <message>
        <source>sorted by tag</source>
        <translation>sortiert nach Kennzeichen</translation>
    </message>
    <message>
        <source>sorted by finding</source>
        <translation>sortiert nach Befund</translation>
    </message>
    <message>
        <source>sorted by level</source>
        <translation>sortiert nach Pegel</translation>
    </message>
    <message>
        <source>sorted by weight</source>
        <translation>sortiert nach Gewicht</translation>
    </message>
    <message>
        <source>sorted by age</source>
        <translation>sortiert nach Alter</translation>
    </message>
    <message>
        <source>sorted by decision</source>
        <translation>sortiert nach Entscheidung</translation>
    </message>
    <message>
        <source>as listed</source>
        <translation>wie aufgeführt</translation>
    </message>
    <message>
        <source>to %1, closed</source>
        <translation>bis %1, abgeschlossen</translation>
    </message>
    <message>
        <source>to %1, open</source>
        <translation>bis %1, offen</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>%1, a draft: no round is open</source>
        <translation>%1, ein Entwurf: keine Runde ist offen</translation>
    </message>
    <message>
        <source>%1, open</source>
        <translation>%1, offen</translation>
    </message>
    <message>
        <source>%1, closed on %2 by %3</source>
        <translation>%1, abgeschlossen am %2 von %3</translation>
    </message>
    <message>
        <source>%1 machines, %2 of them listed, %3 unseen</source>
        <translation>%1 Maschinen, davon %2 aufgeführt, %3 ungesehen</translation>
    </message>
    <message>
        <source>%1 of %2 listed decided</source>
        <translation>%1 von %2 aufgeführten entschieden</translation>
    </message>
    <message>
        <source>%1 of %2 unseen answered</source>
        <translation>%1 von %2 ungesehenen beantwortet</translation>
    </message>
    <message>
        <source>%1 of %2 of the sample opened</source>
        <translation>%1 von %2 der Stichprobe geöffnet</translation>
    </message>
    <message>
        <source>the rest left as a block</source>
        <translation>die übrigen als Block belassen</translation>
    </message>
    <message>
        <source>the rest not yet left as a block</source>
        <translation>die übrigen noch nicht als Block belassen</translation>
    </message>
    <message>
        <source>Without %1 (%2 decibans) the weight would be %3; were it absent where it is expected, %4.</source>
        <translation>Ohne %1 (%2 Deziban) wäre das Gewicht %3; fehlte sie dort, wo sie erwartet wird, %4.</translation>
    </message>
    <message>
        <source>It stays a finding even without all of its found lines: the search carries the rest.</source>
        <translation>Es bleibt ein Befund auch ohne alle gefundenen Linien: die Suche trägt den Rest.</translation>
    </message>
    <message>
        <source>It hangs on one line: without %1 it is below the %2 decibans of a finding.</source>
        <translation>Es hängt an einer Linie: ohne %1 liegt es unter den %2 Deziban eines Befunds.</translation>
    </message>
    <message>
        <source>It stays a finding until the %1 heaviest of its %2 found lines are gone.</source>
        <translation>Es bleibt ein Befund, bis die %1 schwersten der %2 gefundenen Linien weg sind.</translation>
    </message>
    <message>
        <source>%1 decibans are missing to a finding; no single line can bring them.</source>
        <translation>Zu einem Befund fehlen %1 Deziban; keine einzelne Linie kann sie bringen.</translation>
    </message>
    <message>
        <source>%1 decibans are missing to a finding: %2 alone would bring them if its peak were among the highest 1 of %3 positions.</source>
        <translation>Zu einem Befund fehlen %1 Deziban: %2 allein brächte sie, wenn ihre Spitze die höchste von %3 Stellen wäre.</translation>
    </message>
    <message>
        <source>Stage %1 (%2) when %3 of its harmonics stand in the velocity spectrum below 1 kHz.</source>
        <translation>Stadium %1 (%2), wenn %3 der Harmonischen im Schwinggeschwindigkeitsspektrum unter 1 kHz stehen.</translation>
    </message>
    <message>
        <source>Stage %1 (%2) with %3 more harmonics.</source>
        <translation>Stadium %1 (%2) mit %3 weiteren Harmonischen.</translation>
    </message>
    <message>
        <source>Stage %1 (%2) with %3 more sidebands.</source>
        <translation>Stadium %1 (%2) mit %3 weiteren Seitenbändern.</translation>
    </message>
    <message>
        <source>Stage %1 (%2) with %3 more harmonics and %4 more sidebands.</source>
        <translation>Stadium %1 (%2) mit %3 weiteren Harmonischen und %4 weiteren Seitenbändern.</translation>
    </message>
    <message>
        <source>No longer graded when the sideband is %1 or more below its carrier (now %2).</source>
        <translation>Nicht mehr eingestuft, wenn das Seitenband %1 oder mehr unter seinem Träger liegt (jetzt %2).</translation>
    </message>
    <message>
        <source>Graded %1 (%2) when the sideband is %3 below its carrier (now %4).</source>
        <translation>Eingestuft als %1 (%2), wenn das Seitenband %3 unter seinem Träger liegt (jetzt %4).</translation>
    </message>
    <message>
        <source>The speed is known to %1 %. Wrong by %2 % or %3 %, the lines would ask for more slip than bearings usually have.</source>
        <translation>Die Drehzahl ist auf %1 % bekannt. Bei einem Fehler von %2 % oder %3 % verlangten die Linien mehr Schlupf, als Lager üblicherweise haben.</translation>
    </message>
    <message>
        <source>The list of the round to %1 asks for %2 decibans, the machine had %3: it would leave the list by evidence with %4 less.</source>
        <translation>Die Liste der Runde bis %1 verlangt %2 Deziban, die Maschine hatte %3: mit %4 weniger fiele sie nach Belegen von der Liste.</translation>
    </message>
    <message>
        <source>The list of the round to %1 asks for %2 decibans, the machine had %3: %4 were missing to be listed by evidence.</source>
        <translation>Die Liste der Runde bis %1 verlangt %2 Deziban, die Maschine hatte %3: es fehlten %4, um nach Belegen aufgeführt zu werden.</translation>
    </message>
    <message>
        <source>Without its strongest recording the week would weigh %1 decibans.</source>
        <translation>Ohne die stärkste Aufzeichnung wöge die Woche %1 Deziban.</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 mehr</translation>
    </message>
    <message>
        <source>stage %1</source>
        <translation>Stadium %1</translation>
    </message>
    <message>
        <source>zone %1</source>
        <translation>Zone %1</translation>
    </message>
    <message>
        <source>zone %1, %2, next boundary %3</source>
        <translation>Zone %1, %2, nächste Grenze %3</translation>
    </message>
    <message>
        <source>zone %1, %2</source>
        <translation>Zone %1, %2</translation>
    </message>
    <message>
        <source>At the fit that is left to it, it would draw none of the found lines.</source>
        <translation>In der Anpassung, die ihm bleibt, zöge es keine der gefundenen Linien.</translation>
    </message>
    <message>
        <source>At the fit that is left to it, it would draw %1 of the found lines as well (%2 decibans).</source>
        <translation>In der Anpassung, die ihm bleibt, zöge es auch %1 der gefundenen Linien (%2 Deziban).</translation>
    </message>
    <message>
        <source>Drawn by this fault alone: %1 (%2 decibans).</source>
        <translation>Nur von diesem Fehler gezogen: %1 (%2 Deziban).</translation>
    </message>
    <message>
        <source>Lines that it alone would draw are absent: %1.</source>
        <translation>Linien, die nur er erzeugen würde, fehlen: %1.</translation>
    </message>
    <message>
        <source>Lines that it alone would draw are there: %1.</source>
        <translation>Linien, die nur er erzeugen würde, sind vorhanden: %1.</translation>
    </message>
    <message>
        <source>Not judged: %1, %2: %3.</source>
        <translation>Nicht beurteilt: %1, %2: %3.</translation>
    </message>
    <message>
        <source>No finding: %1, %2: the best chance fit reaches %3 decibans; a finding needs 20.</source>
        <translation>Kein Befund: %1, %2: die beste Zufallsübereinstimmung erreicht %3 Deziban; ein Befund verlangt 20.</translation>
    </message>
    <message>
        <source>Before stronger faults claimed their lines it was %1.</source>
        <translation>Bevor stärkere Fehler ihre Linien beanspruchten, waren es %1.</translation>
    </message>
    <message>
        <source>This does not prove the machine sound: see the blind spots.</source>
        <translation>Das beweist nicht, dass die Maschine in Ordnung ist: siehe blinde Flecken.</translation>
    </message>
    <message>
        <source>first at %1 decibans on %2, in %3 recordings by now</source>
        <translation>erstmals mit %1 Deziban am %2, bisher in %3 Aufzeichnungen</translation>
    </message>
    <message>
        <source>10 decibans or more in %1 % of the week&apos;s recordings</source>
        <translation>10 Deziban oder mehr in %1 % der Aufzeichnungen der Woche</translation>
    </message>
    <message>
        <source>named in %1 % of the week&apos;s recordings</source>
        <translation>genannt in %1 % der Aufzeichnungen der Woche</translation>
    </message>
    <message>
        <source>cage shift %1 %</source>
        <translation>Käfigverschiebung %1 %</translation>
    </message>
    <message>
        <source>lines of the strongest recording, %1</source>
        <translation>Linien der stärksten Aufzeichnung, %1</translation>
    </message>
    <message>
        <source>proved on %1</source>
        <translation>nachgewiesen %1</translation>
    </message>
    <message>
        <source>%1, %2: %3 decibans before claims; %4.</source>
        <translation>%1, %2: %3 Deziban vor Beanspruchung; %4.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1. Cure: %2</source>
        <translation>%1. Abhilfe: %2</translation>
    </message>
    <message>
        <source>Bars: for to the right, against to the left. %1 decibans (dashed) make a finding. 30 decibans: chance lines reach it in at most 1 recording of 1,000.</source>
        <translation>Balken: dafür nach rechts, dagegen nach links. %1 Deziban (gestrichelt) ergeben einen Befund. 30 Deziban: Zufallslinien erreichen das in höchstens 1 von 1000 Aufzeichnungen.</translation>
    </message>
    <message>
        <source>%1 g</source>
        <translation>%1 g</translation>
    </message>
    <message>
        <source>run 0</source>
        <translation>Lauf 0</translation>
    </message>
    <message>
        <source>run %1</source>
        <translation>Lauf %1</translation>
    </message>
    <message>
        <source>correction</source>
        <translation>Ausgleich</translation>
    </message>
    <message>
        <source>seen from the %1</source>
        <translation>gesehen von %1</translation>
    </message>
    <message>
        <source>Arrows stand here when readings are typed.</source>
        <translation>Hier stehen Zeiger, sobald Ablesungen eingegeben sind.</translation>
    </message>
    <message>
        <source>predicted</source>
        <translation>vorhergesagt</translation>
    </message>
    <message>
        <source>check</source>
        <translation>Kontrolle</translation>
    </message>
    <message>
        <source>%1: %2 %3 at %4 degrees.</source>
        <translation>%1: %2 %3 bei %4 Grad.</translation>
    </message>
    <message>
        <source>%1: circle of %2 %3.</source>
        <translation>%1: Kreis von %2 %3.</translation>
    </message>
    <message>
        <source>Turns clockwise.</source>
        <translation>Dreht im Uhrzeigersinn.</translation>
    </message>
    <message>
        <source>Turns anticlockwise.</source>
        <translation>Dreht gegen den Uhrzeigersinn.</translation>
    </message>
    <message>
        <source>Degrees are counted with the rotation from the mark.</source>
        <translation>Grad werden in Drehrichtung von der Marke aus gezählt.</translation>
    </message>
    <message>
        <source>Degrees are counted against the rotation from the mark.</source>
        <translation>Grad werden gegen die Drehrichtung von der Marke aus gezählt.</translation>
    </message>
    <message>
        <source>%1 at %2 degrees.</source>
        <translation>%1 bei %2 Grad.</translation>
    </message>
    <message>
        <source>degrees with the rotation</source>
        <translation>Grad in Drehrichtung</translation>
    </message>
    <message>
        <source>degrees against the rotation</source>
        <translation>Grad gegen Drehrichtung</translation>
    </message>
    <message>
        <source>%1 peak</source>
        <translation>%1 Spitze</translation>
    </message>
    <message>
        <source>%1 peak to peak</source>
        <translation>%1 Spitze-Spitze</translation>
    </message>
    <message>
        <source>Balance record of %1</source>
        <translation>Auswuchtprotokoll %1</translation>
    </message>
    <message>
        <source>rotor of the driven machine</source>
        <translation>Rotor der Arbeitsmaschine</translation>
    </message>
    <message>
        <source>rotor of the motor</source>
        <translation>Rotor des Motors</translation>
    </message>
    <message>
        <source>%1 kg</source>
        <translation>%1 kg</translation>
    </message>
    <message>
        <source>grade %1</source>
        <translation>Gütestufe %1</translation>
    </message>
    <message>
        <source>permissible unbalance %1 g mm</source>
        <translation>zulässige Unwucht %1 g mm</translation>
    </message>
    <message>
        <source>coefficients of %1, %2</source>
        <translation>Koeffizienten von %1, %2</translation>
    </message>
    <message>
        <source>Masses</source>
        <translation>Massen</translation>
    </message>
    <message>
        <source>To be minded</source>
        <translation>Zu beachten</translation>
    </message>
    <message>
        <source>Note:</source>
        <translation>Notiz:</translation>
    </message>
    <message>
        <source>balanced by</source>
        <translation>ausgewuchtet von</translation>
    </message>
    <message>
        <source>date</source>
        <translation>Datum</translation>
    </message>
    <message>
        <source>checked by</source>
        <translation>geprüft von</translation>
    </message>
    <message>
        <source>work order</source>
        <translation>Arbeitsauftrag-Nr.</translation>
    </message>
    <message>
        <source>Rotor:</source>
        <translation>Rotor:</translation>
    </message>
    <message>
        <source>Angles:</source>
        <translation>Winkel:</translation>
    </message>
    <message>
        <source>Runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <source>absent</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>%1 more lines, in the JSON twin</source>
        <translation>%1 weitere Linien, in der JSON-Begleitdatei</translation>
    </message>
    <message>
        <source>Put off by the engineer</source>
        <translation>Vom Ingenieur verschoben</translation>
    </message>
    <message>
        <source>Listed, but disputed: no work is asked for</source>
        <translation>Aufgeführt, aber bestritten: keine Arbeit angefordert</translation>
    </message>
    <message>
        <source>Watched: no work yet, looked at again in the next round</source>
        <translation>Beobachtet: noch keine Arbeit, in der nächsten Runde erneut betrachtet</translation>
    </message>
    <message>
        <source>Since the round to %1</source>
        <translation>Seit der Runde bis %1</translation>
    </message>
    <message>
        <source>How often the list was right here</source>
        <translation>Wie oft die Liste hier richtig lag</translation>
    </message>
    <message>
        <source>Safety comes first</source>
        <translation>Sicherheit geht vor</translation>
    </message>
    <message>
        <source>Made on %1 by Fettle %2. Advice from measured data, no permit to work.</source>
        <translation>Erstellt am %1 mit Fettle %2. Rat aus Messdaten, keine Arbeitsfreigabe.</translation>
    </message>
    <message>
        <source>Round to %1 against round to %2</source>
        <translation>Runde bis %1 gegen Runde bis %2</translation>
    </message>
    <message>
        <source>%1 on leave in both</source>
        <translation>%1 in beiden belassen</translation>
    </message>
    <message>
        <source>Machine by machine</source>
        <translation>Maschine für Maschine</translation>
    </message>
    <message>
        <source>Round report, %1, to %2</source>
        <translation>Rundenbericht, %1, bis %2</translation>
    </message>
    <message>
        <source>%1 %2: that day has passed</source>
        <translation>%1 %2: Termin verstrichen</translation>
    </message>
    <message>
        <source>%1.</source>
        <translation>%1.</translation>
    </message>
    <message>
        <source>%1 more on its sheet.</source>
        <translation>%1 weitere auf dem Blatt.</translation>
    </message>
    <message>
        <source>Possible only: the inspection decides.</source>
        <translation>Nur möglich: die Inspektion entscheidet.</translation>
    </message>
    <message>
        <source>Found:</source>
        <translation>Gefunden:</translation>
    </message>
    <message>
        <source>Until then:</source>
        <translation>Bis dahin:</translation>
    </message>
    <message>
        <source>Stop at once if</source>
        <translation>Sofort abstellen, wenn</translation>
    </message>
    <message>
        <source>parts:</source>
        <translation>Teile:</translation>
    </message>
    <message>
        <source>%1 of 4</source>
        <translation>%1 von 4</translation>
    </message>
    <message>
        <source>priority:</source>
        <translation>Priorität:</translation>
    </message>
    <message>
        <source>%1; reason confirmed</source>
        <translation>%1; Grund bestätigt</translation>
    </message>
    <message>
        <source>The work in full, in its order</source>
        <translation>Die Arbeiten vollständig, in ihrer Reihenfolge</translation>
    </message>
    <message>
        <source>no.</source>
        <translation>Nr.</translation>
    </message>
    <message>
        <source>machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>what to do</source>
        <translation>was zu tun ist</translation>
    </message>
    <message>
        <source>by when</source>
        <translation>bis wann</translation>
    </message>
    <message>
        <source>Each has a findings sheet of its own with steps, parts, tools, permits and cautions.</source>
        <translation>Jede hat ein eigenes Befundblatt mit Schritten, Teilen, Werkzeugen, Freigaben und Warnhinweisen.</translation>
    </message>
    <message>
        <source>finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>why</source>
        <translation>warum</translation>
    </message>
    <message>
        <source>Machines that could not be judged</source>
        <translation>Maschinen, die nicht beurteilt werden konnten</translation>
    </message>
    <message>
        <source>reason</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>whose matter</source>
        <translation>zuständig</translation>
    </message>
    <message>
        <source>when last seen</source>
        <translation>zuletzt gesehen</translation>
    </message>
    <message>
        <source>Jobs to verify, overdue, due again, late</source>
        <translation>Aufträge: zu prüfen, überfällig, erneut fällig, verspätet</translation>
    </message>
    <message>
        <source>what</source>
        <translation>was</translation>
    </message>
    <message>
        <source>since</source>
        <translation>seit</translation>
    </message>
    <message>
        <source>how it stands</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>What could not be seen on the listed machines</source>
        <translation>Was an den aufgeführten Maschinen nicht zu sehen war</translation>
    </message>
    <message>
        <source>fault</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>Whether sensor, band, length of recording and place could show it at all; the page of each machine says why and what would cure it.</source>
        <translation>Ob Sensor, Band, Aufzeichnungsdauer und Ort ihn überhaupt zeigen könnten; die Seite jeder Maschine nennt Grund und Abhilfe.</translation>
    </message>
    <message>
        <source>move</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>decided then, now</source>
        <translation>Entscheidung damals, jetzt</translation>
    </message>
    <message>
        <source>%1; %2</source>
        <translation>%1; %2</translation>
    </message>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
    <message>
        <source>%1 and %2 more</source>
        <translation>%1 und %2 weitere</translation>
    </message>
    <message>
        <source>No machine asks for work this week.</source>
        <translation>Keine Maschine verlangt diese Woche Arbeit.</translation>
    </message>
    <message>
        <source>%1 to act on now, %2 to plan for.</source>
        <translation>%1 jetzt zu handeln, %2 einzuplanen.</translation>
    </message>
    <message>
        <source>%1 machines: %2 act, %3 plan, %4 watch, %5 unseen, %6 leave. The round is %7.</source>
        <translation>%1 Maschinen: %2 handeln, %3 einplanen, %4 beobachten, %5 ungesehen, %6 belassen. Die Runde ist %7.</translation>
    </message>
    <message>
        <source>latest</source>
        <translation>spätestens</translation>
    </message>
    <message>
        <source>place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>no date</source>
        <translation>kein Termin</translation>
    </message>
    <message>
        <source>%1, passed</source>
        <translation>%1, verstrichen</translation>
    </message>
    <message>
        <source>What needs work, in this order</source>
        <translation>Was Arbeit verlangt, in dieser Reihenfolge</translation>
    </message>
    <message>
        <source>Nothing. What is watched, put off or disputed stands in the tables.</source>
        <translation>Nichts. Beobachtetes, Verschobenes und Bestrittenes steht in den Tabellen.</translation>
    </message>
    <message>
        <source>and %1 more, in the tables that follow</source>
        <translation>und %1 weitere, in den folgenden Tabellen</translation>
    </message>
    <message>
        <source>%1 of these are not decided yet: the engineer may still change them.</source>
        <translation>%1 davon sind noch nicht entschieden: der Ingenieur kann sie noch ändern.</translation>
    </message>
    <message>
        <source>Not seen</source>
        <translation>Nicht gesehen</translation>
    </message>
    <message>
        <source>Every machine could be judged.</source>
        <translation>Jede Maschine konnte beurteilt werden.</translation>
    </message>
    <message>
        <source>Promised, and due</source>
        <translation>Zugesagt und fällig</translation>
    </message>
    <message>
        <source>No job waits for a check, none is overdue.</source>
        <translation>Kein Auftrag wartet auf Prüfung, keiner ist überfällig.</translation>
    </message>
    <message>
        <source>put off by the engineer:</source>
        <translation>vom Ingenieur verschoben:</translation>
    </message>
    <message>
        <source>What changed</source>
        <translation>Was sich geändert hat</translation>
    </message>
    <message>
        <source>since the round to %1</source>
        <translation>seit der Runde bis %1</translation>
    </message>
    <message>
        <source>No machine moved.</source>
        <translation>Keine Maschine mit Veränderung.</translation>
    </message>
    <message>
        <source>What this list cannot tell</source>
        <translation>Was diese Liste nicht sagen kann</translation>
    </message>
    <message>
        <source>Round report, %1</source>
        <translation>Rundenbericht, %1</translation>
    </message>
    <message>
        <source>made on %1</source>
        <translation>erstellt am %1</translation>
    </message>
    <message>
        <source>%1, the %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Round report, %1, %2</source>
        <translation>Rundenbericht, %1, %2</translation>
    </message>
    <message>
        <source>as of the %1; made on %2</source>
        <translation>Stand: %1; erstellt am %2</translation>
    </message>
    <message>
        <source>Findings sheet, %1</source>
        <translation>Befundblatt, %1</translation>
    </message>
    <message>
        <source>priority of the site</source>
        <translation>Priorität des Standorts</translation>
    </message>
    <message>
        <source>finding, %1 of %2</source>
        <translation>Befund, %1 von %2</translation>
    </message>
    <message>
        <source>asset number</source>
        <translation>Anlagennr.</translation>
    </message>
    <message>
        <source>job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Shortened (…): the whole is in the JSON twin. </source>
        <translation>Gekürzt (…): vollständig in der JSON-Begleitdatei. </translation>
    </message>
    <message>
        <source>Made on %1 by Fettle %2.</source>
        <translation>Erstellt am %1 mit Fettle %2.</translation>
    </message>
    <message>
        <source>%1   %2 of %3</source>
        <translation>%1   %2 von %3</translation>
    </message>
    <message>
        <source>%1 to %2, the work itself</source>
        <translation>%1 bis %2, die Arbeit selbst</translation>
    </message>
    <message>
        <source>People:</source>
        <translation>Personen:</translation>
    </message>
    <message>
        <source>Hours:</source>
        <translation>Stunden:</translation>
    </message>
    <message>
        <source>number of people</source>
        <translation>Anzahl Personen</translation>
    </message>
    <message>
        <source>hours</source>
        <translation>Stunden</translation>
    </message>
    <message>
        <source>the site decides</source>
        <translation>der Standort entscheidet</translation>
    </message>
    <message>
        <source>Likely permits:</source>
        <translation>Voraussichtliche Freigaben:</translation>
    </message>
    <message>
        <source>What it takes</source>
        <translation>Was nötig ist</translation>
    </message>
    <message>
        <source>Machine:</source>
        <translation>Maschine:</translation>
    </message>
    <message>
        <source>Tools:</source>
        <translation>Werkzeuge:</translation>
    </message>
    <message>
        <source>Lifting:</source>
        <translation>Heben:</translation>
    </message>
    <message>
        <source>Access:</source>
        <translation>Zugang:</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>quantity</source>
        <translation>Menge</translation>
    </message>
    <message>
        <source>designation</source>
        <translation>Bezeichnung</translation>
    </message>
    <message>
        <source>Parts: %1</source>
        <translation>Teile: %1</translation>
    </message>
    <message>
        <source>Send back after the job, as found</source>
        <translation>Nach dem Auftrag zurücksenden, wie vorgefunden</translation>
    </message>
    <message>
        <source>; cure: %1</source>
        <translation>; Abhilfe: %1</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>expected</source>
        <translation>erwartet</translation>
    </message>
    <message>
        <source>found Hz</source>
        <translation>gef. Hz</translation>
    </message>
    <message>
        <source>dB up</source>
        <translation>dB über</translation>
    </message>
    <message>
        <source>The rows add up to the weight; search is the price of having looked in many places. dB up: over the floor about the line. Bars: to the right for it, to the left against it.</source>
        <translation>Die Zeilen ergeben summiert das Gewicht; Suche ist der Preis dafür, an vielen Stellen gesucht zu haben. dB über: über dem Grundrauschen um die Linie. Balken: nach rechts dafür, nach links dagegen.</translation>
    </message>
    <message>
        <source>Why we think so</source>
        <translation>Warum wir das annehmen</translation>
    </message>
    <message>
        <source>Lines</source>
        <translation>Linien</translation>
    </message>
    <message>
        <source>The lines it stands on</source>
        <translation>Die Linien, auf die es sich stützt</translation>
    </message>
    <message>
        <source>What this could not see</source>
        <translation>Was hier nicht zu sehen war</translation>
    </message>
    <message>
        <source>… and %1 more on the page of the machine.</source>
        <translation>… und %1 weitere auf der Seite der Maschine.</translation>
    </message>
    <message>
        <source>No spectrum: %1</source>
        <translation>Kein Spektrum: %1</translation>
    </message>
    <message>
        <source>No trend: fewer than two days were measured.</source>
        <translation>Kein Trend: weniger als zwei Tage gemessen.</translation>
    </message>
    <message>
        <source>What to do</source>
        <translation>Was zu tun ist</translation>
    </message>
    <message>
        <source>Steps without a source in brackets are common practice.</source>
        <translation>Schritte ohne Quelle in Klammern sind übliche Praxis.</translation>
    </message>
    <message>
        <source>%1 about %2</source>
        <translation>%1 etwa %2</translation>
    </message>
    <message>
        <source> (%1 to %2)</source>
        <translation> (%1 bis %2)</translation>
    </message>
    <message>
        <source> (%1 or later)</source>
        <translation> (%1 oder später)</translation>
    </message>
    <message>
        <source>own</source>
        <translation>eigene</translation>
    </message>
    <message>
        <source>weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>promised</source>
        <translation>zugesagt</translation>
    </message>
    <message>
        <source>change</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>told: 3 of 5</source>
        <translation>belegt: 3 von 5</translation>
    </message>
    <message>
        <source>Trial %1</source>
        <translation>Versuch %1</translation>
    </message>
    <message>
        <source>Trial in work: %1</source>
        <translation>Versuch in Arbeit: %1</translation>
    </message>
    <message>
        <source>Trial sheet, %1; made on %2</source>
        <translation>Versuchsblatt, %1; erstellt am %2</translation>
    </message>
    <message>
        <source>Trial sheet, %1: %2</source>
        <translation>Versuchsblatt, %1: %2</translation>
    </message>
    <message>
        <source>What is changed, and what it has to do</source>
        <translation>Was geändert wird und was es bewirken muss</translation>
    </message>
    <message>
        <source>value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>in words</source>
        <translation>in Worten</translation>
    </message>
    <message>
        <source>channel followed</source>
        <translation>verfolgter Kanal</translation>
    </message>
    <message>
        <source>how it was worked out</source>
        <translation>wie ermittelt</translation>
    </message>
    <message>
        <source>mind</source>
        <translation>beachten</translation>
    </message>
    <message>
        <source>warning</source>
        <translation>Warnung</translation>
    </message>
    <message>
        <source>stopped and isolated</source>
        <translation>abgestellt und freigeschaltet</translation>
    </message>
    <message>
        <source>turning again, changed</source>
        <translation>läuft wieder, geändert</translation>
    </message>
    <message>
        <source>recordings up to</source>
        <translation>Aufzeichnungen bis</translation>
    </message>
    <message>
        <source>The promise</source>
        <translation>Die Zusage</translation>
    </message>
    <message>
        <source>Frozen on %1 by %2.</source>
        <translation>Festgeschrieben am %1 von %2.</translation>
    </message>
    <message>
        <source>Not frozen yet: the trial is not started.</source>
        <translation>Noch nicht festgeschrieben: der Versuch ist nicht begonnen.</translation>
    </message>
    <message>
        <source>What came</source>
        <translation>Was eintrat</translation>
    </message>
    <message>
        <source>promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>found</source>
        <translation>gefunden</translation>
    </message>
    <message>
        <source>kept?</source>
        <translation>gehalten?</translation>
    </message>
    <message>
        <source>Recording by recording</source>
        <translation>Aufzeichnung für Aufzeichnung</translation>
    </message>
    <message>
        <source>Weight in decibans (left) and 1x in mm/s r.m.s. (right, where it is followed); the marks say when the change was made and when 3 of 5 recordings had told it.</source>
        <translation>Gewicht in Deziban (links) und 1x in mm/s eff. (rechts, wo verfolgt); die Marken zeigen, wann geändert wurde und wann 3 von 5 Aufzeichnungen es belegt hatten.</translation>
    </message>
    <message>
        <source>All recordings</source>
        <translation>Alle Aufzeichnungen</translation>
    </message>
    <message>
        <source>time</source>
        <translation>Zeit</translation>
    </message>
    <message>
        <source>side</source>
        <translation>Seite</translation>
    </message>
    <message>
        <source>1x, mm/s</source>
        <translation>1x, mm/s</translation>
    </message>
    <message>
        <source>named more strongly</source>
        <translation>stärker genannt</translation>
    </message>
    <message>
        <source>after</source>
        <translation>nachher</translation>
    </message>
    <message>
        <source>before</source>
        <translation>vorher</translation>
    </message>
    <message>
        <source>Signed</source>
        <translation>Unterschriften</translation>
    </message>
    <message>
        <source>Answers for it:</source>
        <translation>Verantwortlich:</translation>
    </message>
    <message>
        <source>Permit:</source>
        <translation>Freigabe:</translation>
    </message>
    <message>
        <source>Stopped at once at:</source>
        <translation>Sofort abstellen bei:</translation>
    </message>
    <message>
        <source>Remarks:</source>
        <translation>Bemerkungen:</translation>
    </message>
    <message>
        <source>change made by, date</source>
        <translation>Änderung ausgeführt von, Datum</translation>
    </message>
    <message>
        <source>change taken out and checked by, date</source>
        <translation>Änderung zurückgenommen und geprüft von, Datum</translation>
    </message>
    <message>
        <source>witness, date</source>
        <translation>Zeuge, Datum</translation>
    </message>
    <message>
        <source>Cautions; a filled box was confirmed before the start</source>
        <translation>Warnhinweise; ein ausgefülltes Kästchen wurde vor Beginn bestätigt</translation>
    </message>
    <message>
        <source>Made on %1 by Fettle %2. A record of a trial, no permit to work.</source>
        <translation>Erstellt am %1 mit Fettle %2. Protokoll eines Versuchs, keine Arbeitsfreigabe.</translation>
    </message>
    <message>
        <source>Trial sheet %1: %2</source>
        <translation>Versuchsblatt %1: %2</translation>
    </message>
    <message>
        <source>Readings asked for, %1</source>
        <translation>Angeforderte Messungen, %1</translation>
    </message>
    <message>
        <source>By hand, in the order of the walk</source>
        <translation>Von Hand, in der Reihenfolge des Rundgangs</translation>
    </message>
    <message>
        <source>where</source>
        <translation>wo</translation>
    </message>
    <message>
        <source>how</source>
        <translation>wie</translation>
    </message>
    <message>
        <source>file, reading, seen</source>
        <translation>Datei, Messwert, gesehen</translation>
    </message>
    <message>
        <source>At usual running and load. Note speed and load with each reading.</source>
        <translation>Bei üblichem Betrieb und üblicher Last. Drehzahl und Last zu jeder Messung notieren.</translation>
    </message>
    <message>
        <source>Of the nodes: to be set by whoever looks after them</source>
        <translation>Von den Knoten: einzustellen von deren Betreuer</translation>
    </message>
    <message>
        <source>point</source>
        <translation>Messpunkt</translation>
    </message>
    <message>
        <source>The machines run: take readings only where guards are fitted and the place is reached safely; no loose clothing, no cable or magnet near a shaft, a coupling or a belt.</source>
        <translation>Die Maschinen laufen: nur messen, wo Schutzvorrichtungen angebracht sind und die Stelle sicher erreichbar ist; keine lose Kleidung, kein Kabel oder Magnet nahe Welle, Kupplung oder Riemen.</translation>
    </message>
    <message>
        <source>A guard that hides a bearing stays on. What cannot be reached is written down as not reached.</source>
        <translation>Eine Schutzvorrichtung, die ein Lager verdeckt, bleibt angebracht. Was nicht erreichbar ist, wird als nicht erreicht vermerkt.</translation>
    </message>
    <message>
        <source>Hot surfaces, noise, dust and explosive areas: use what the site prescribes, and only instruments approved for the place.</source>
        <translation>Heiße Oberflächen, Lärm, Staub und explosionsgefährdete Bereiche: Vorgaben des Standorts einhalten und nur für den Ort zugelassene Messgeräte verwenden.</translation>
    </message>
    <message>
        <source>A reflecting mark for the tachometer is put on only at a standstill, isolated and locked by authorised people.</source>
        <translation>Eine Reflexmarke für den Drehzahlmesser wird nur im Stillstand angebracht, freigeschaltet und gegen Wiedereinschalten gesichert durch befugte Personen.</translation>
    </message>
    <message>
        <source>Site rules, local codes and licensed practice come first; this leaf is advice, no permit to work.</source>
        <translation>Betriebsregeln, örtliche Vorschriften und die Arbeit zugelassener Fachkräfte gehen vor; dieses Blatt ist Rat, keine Arbeitsfreigabe.</translation>
    </message>
    <message>
        <source>%1 s or more</source>
        <translation>%1 s oder mehr</translation>
    </message>
    <message>
        <source>to %1 %2</source>
        <translation>bis %1 %2</translation>
    </message>
    <message>
        <source>%1 lines</source>
        <translation>%1 Linien</translation>
    </message>
    <message>
        <source>with a tachometer</source>
        <translation>mit Drehzahlmesser</translation>
    </message>
    <message>
        <source>a running recording</source>
        <translation>eine Aufzeichnung in Betrieb</translation>
    </message>
    <message>
        <source>%1 by hand, %2 of the nodes. Made on %3.</source>
        <translation>%1 von Hand, %2 von den Knoten. Erstellt am %3.</translation>
    </message>
    <message>
        <source>Nothing is asked for.</source>
        <translation>Nichts ist angefordert.</translation>
    </message>
    <message>
        <source>ended %1 days ago: newer recordings may tell otherwise</source>
        <translation>vor %1 Tagen beendet: neuere Aufzeichnungen können anderes sagen</translation>
    </message>
    <message>
        <source>How bad:</source>
        <translation>Wie schlimm:</translation>
    </message>
    <message>
        <source>Before:</source>
        <translation>Vorher:</translation>
    </message>
    <message>
        <source>takes:</source>
        <translation>braucht:</translation>
    </message>
    <message>
        <source>%1 (no. %2)</source>
        <translation>%1 (Nr. %2)</translation>
    </message>
    <message>
        <source>people and hours not known</source>
        <translation>Leute und Stunden nicht bekannt</translation>
    </message>
    <message>
        <source>1 person, %1 to %2 h</source>
        <translation>1 Person, %1 bis %2 h</translation>
    </message>
    <message>
        <source>%1 people, %2 to %3 h</source>
        <translation>%1 Leute, %2 bis %3 h</translation>
    </message>
    <message>
        <source>machine stopped</source>
        <translation>Maschine steht</translation>
    </message>
    <message>
        <source>machine running</source>
        <translation>Maschine läuft</translation>
    </message>
    <message>
        <source>machine running, stopped for part</source>
        <translation>Maschine läuft, steht zum Teil</translation>
    </message>
    <message>
        <source>%1 to %2 person-hours</source>
        <translation>%1 bis %2 Personenstunden</translation>
    </message>
    <message>
        <source>The same work by area, to share a stop</source>
        <translation>Dieselbe Arbeit nach Bereich, um einen Stillstand zu teilen</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Bereich</translation>
    </message>
    <message>
        <source>machines</source>
        <translation>Maschinen</translation>
    </message>
    <message>
        <source>first latest day</source>
        <translation>erster spätester Tag</translation>
    </message>
    <message>
        <source>takes</source>
        <translation>braucht</translation>
    </message>
    <message>
        <source>no area given</source>
        <translation>kein Bereich angegeben</translation>
    </message>
    <message>
        <source>of machines</source>
        <translation>von Maschinen</translation>
    </message>
    <message>
        <source>at no place of</source>
        <translation>an keinem Ort von</translation>
    </message>
    <message>
        <source>at some places only of</source>
        <translation>nur an manchen Orten von</translation>
    </message>
    <message>
        <source>what would show it on most</source>
        <translation>was es an den meisten zeigen würde</translation>
    </message>
    <message>
        <source>On %1: %2 to act on, %3 to plan for.</source>
        <translation>Am %1: bei %2 zu handeln, %3 einzuplanen.</translation>
    </message>
    <message>
        <source>%1: %2 (%3, machine stopped for %4)</source>
        <translation>%1: %2 (%3, Maschine steht bei %4)</translation>
    </message>
    <message>
        <source>All together</source>
        <translation>Alles zusammen</translation>
    </message>
    <message>
        <source>The work itself by common practice, every finding that asks for work counted: without isolating, getting there and waiting. What is done in one stop may take less.</source>
        <translation>Die Arbeit selbst nach üblicher Praxis, jeder Befund gezählt, der Arbeit verlangt: ohne Freischalten, Wege und Warten. Was in einem Stillstand getan wird, kann weniger brauchen.</translation>
    </message>
    <message>
        <source>Not counted, for want of figures: %1.</source>
        <translation>Nicht gezählt, weil Zahlen fehlen: %1.</translation>
    </message>
    <message>
        <source>This is the first round kept here: levels are set against the weeks before it.</source>
        <translation>Dies ist die erste hier aufbewahrte Runde: Pegel werden an den Wochen davor gemessen.</translation>
    </message>
    <message>
        <source>could be seen at no place of %1 of the %2 listed machines it concerns.</source>
        <translation>war an keinem Ort von %1 der %2 gelisteten Maschinen zu sehen, die es betrifft.</translation>
    </message>
    <message>
        <source>could be seen at some places only of %1 of the %2 listed machines it concerns.</source>
        <translation>war nur an manchen Orten von %1 der %2 gelisteten Maschinen zu sehen, die es betrifft.</translation>
    </message>
    <message>
        <source>could be seen at no place of %1, and at some places only of %2, of the %3 listed machines it concerns.</source>
        <translation>war an keinem Ort von %1 und nur an manchen Orten von %2 der %3 gelisteten Maschinen zu sehen, die es betrifft.</translation>
    </message>
    <message>
        <source>%1. Marked: %2</source>
        <translation>%1. Markiert: %2</translation>
    </message>
    <message>
        <source>%1 %2, %3</source>
        <translation>%1 %2, %3</translation>
    </message>
    <message>
        <source>Zone %1 (%2) above %3, %5 % higher than now (%4).</source>
        <translation>Zone %1 (%2) über %3, %5 % höher als jetzt (%4).</translation>
    </message>
    <message>
        <source>Zone %1 (%2) at %3 or less, %5 % lower than now (%4).</source>
        <translation>Zone %1 (%2) bei %3 oder weniger, %5 % tiefer als jetzt (%4).</translation>
    </message>
    <message>
        <source>If left:</source>
        <translation>Wenn nichts geschieht:</translation>
    </message>
    <message>
        <source>Measure after the job:</source>
        <translation>Nach der Arbeit messen:</translation>
    </message>
    <message>
        <source>Cured when</source>
        <translation>Behoben, wenn</translation>
    </message>
    <message>
        <source>How sure:</source>
        <translation>Wie sicher:</translation>
    </message>
    <message>
        <source>Proved on:</source>
        <translation>Erprobt:</translation>
    </message>
    <message>
        <source>Against it:</source>
        <translation>Dagegen:</translation>
    </message>
    <message>
        <source>Would speak against it:</source>
        <translation>Dagegen spräche:</translation>
    </message>
    <message>
        <source>It could also be:</source>
        <translation>Es könnte auch sein:</translation>
    </message>
    <message>
        <source>Also found on this machine:</source>
        <translation>An dieser Maschine auch gefunden:</translation>
    </message>
    <message>
        <source>round of %1 to %2</source>
        <translation>Runde vom %1 bis %2</translation>
    </message>
    <message>
        <source>at once, also in quiet hours</source>
        <translation>sofort, auch in Ruhezeiten</translation>
    </message>
    <message>
        <source>at once, after quiet hours</source>
        <translation>sofort, nach den Ruhezeiten</translation>
    </message>
    <message>
        <source>in the daily digest</source>
        <translation>in der Tagesübersicht</translation>
    </message>
    <message>
        <source>not sent, listed only</source>
        <translation>nicht gesendet, nur gelistet</translation>
    </message>
    <message>
        <source>weight of a fault</source>
        <translation>Gewicht eines Fehlers</translation>
    </message>
    <message>
        <source>zone of a level</source>
        <translation>Zone eines Pegels</translation>
    </message>
    <message>
        <source>stage of a bearing</source>
        <translation>Stadium eines Lagers</translation>
    </message>
    <message>
        <source>growth in a week</source>
        <translation>Wachstum in einer Woche</translation>
    </message>
    <message>
        <source>silence of a sensor</source>
        <translation>Schweigen eines Sensors</translation>
    </message>
    <message>
        <source>cleared</source>
        <translation>erledigt</translation>
    </message>
    <message>
        <source>acknowledged</source>
        <translation>quittiert</translation>
    </message>
    <message>
        <source>open, no longer seen</source>
        <translation>offen, nicht mehr gesehen</translation>
    </message>
    <message>
        <source>Open: nobody has seen to it yet.</source>
        <translation>Offen: noch niemand hat sich darum gekümmert.</translation>
    </message>
    <message>
        <source>Acknowledged by %1 on %2: %3</source>
        <translation>Quittiert von %1 am %2: %3</translation>
    </message>
    <message>
        <source>No control chart: its days do not differ.</source>
        <translation>Keine Regelkarte: ihre Tage unterscheiden sich nicht.</translation>
    </message>
    <message>
        <source>No baseline is kept for %1, the round does not follow it.</source>
        <translation>Für %1 gibt es kein Ausgangsband, die Runde verfolgt es nicht.</translation>
    </message>
    <message>
        <source>%1 No control chart: it needs %2 days, there are %3.</source>
        <translation>%1 Keine Regelkarte: sie braucht %2 Tage, es sind %3.</translation>
    </message>
    <message>
        <source>no control chart: %1 of %2 days</source>
        <translation>keine Regelkarte: %1 von %2 Tagen</translation>
    </message>
    <message>
        <source>%1 The chart stands on the median of all %2 days instead: it shows a jump, but takes a slow growth for usual. %3</source>
        <translation>%1 Die Karte steht stattdessen auf dem Median aller %2 Tage: Sie zeigt einen Sprung, hält aber langsames Wachstum für üblich. %3</translation>
    </message>
    <message>
        <source>about the median of all days: no baseline</source>
        <translation>um den Median aller Tage: kein Ausgangsband</translation>
    </message>
    <message>
        <source>Every line adds to the weight or takes from it, in decibans. Lines found (%1): %2. Expected but absent (%3): %4. Search: %5, the price of having tried many fits.</source>
        <translation>Jede Linie gibt dem Gewicht etwas oder nimmt davon, in Deziban. Gefundene Linien (%1): %2. Erwartet, aber nicht da (%3): %4. Suche: %5, der Preis vieler versuchter Anpassungen.</translation>
    </message>
    <message>
        <source>%1 From this strongest recording to the mean of all %2: %3.</source>
        <translation>%1 Von dieser stärksten Aufzeichnung zum Mittel aller %2: %3.</translation>
    </message>
    <message>
        <source>%1 Together %2, the weight at the foot.</source>
        <translation>%1 Zusammen %2, das Gewicht am Fuß.</translation>
    </message>
    <message>
        <source>all data</source>
        <translation>alle Daten</translation>
    </message>
    <message>
        <source>as shown</source>
        <translation>wie gezeigt</translation>
    </message>
    <message>
        <source>one row a spectrum, in %1; columns are the middles of its lines</source>
        <translation>eine Zeile je Spektrum, in %1; Spalten sind die Mitten seiner Linien</translation>
    </message>
    <message>
        <source>coarse: the largest of every %1 hours so far</source>
        <translation>grob: bisher das Größte von je %1 Stunden</translation>
    </message>
    <message>
        <source>until %1 the largest of every %2 hours: single spectra are no longer kept</source>
        <translation>bis %1 das Größte von je %2 Stunden: einzelne Spektren sind nicht mehr aufgehoben</translation>
    </message>
    <message>
        <source>%1 Of the %2 weeks asked, %3 had recordings thinned by retention: verdicts there stand on those left, the strongest of each day, so weights lean high.</source>
        <translation>%1 Von den %2 gefragten Wochen waren in %3 Aufnahmen nach den Regeln der Aufbewahrung ausgedünnt: Befunde dort stehen auf den verbliebenen, den stärksten jedes Tages, und wiegen daher eher zu viel.</translation>
    </message>
    <message>
        <source>hh:mm
d MMM</source>
        <translation>hh:mm
d. MMM</translation>
    </message>
    <message>
        <source>d MMM
yyyy</source>
        <translation>d. MMM
yyyy</translation>
    </message>
</context>
<context>
    <name>fettle::AboutDialog</name>
    <message>
        <source>&lt;h3&gt;Fettle&lt;/h3&gt;&lt;p&gt;Engine %1&lt;/p&gt;&lt;p&gt;For the engineer who answers for a fleet of electric motors and the machines they drive. A verdict is advice: site rules, local codes and licensed electrical and mechanical practice come first.&lt;/p&gt;&lt;p&gt;Free software under the GNU General Public License, version 3, without any warranty. It stands on:&lt;/p&gt;</source>
        <translation>&lt;h3&gt;Fettle&lt;/h3&gt;&lt;p&gt;Rechenkern %1&lt;/p&gt;&lt;p&gt;Für den Ingenieur, der für eine Flotte von Elektromotoren und ihre Arbeitsmaschinen einsteht. Ein Urteil ist ein Rat: Betriebsregeln, örtliche Vorschriften und die Arbeit zugelassener Elektro- und Mechanikfachkräfte gehen vor.&lt;/p&gt;&lt;p&gt;Freie Software unter der GNU General Public License, Version 3, ohne jede Gewährleistung. Sie beruht auf:&lt;/p&gt;</translation>
    </message>
    <message>
        <source>About Fettle</source>
        <translation>Über Fettle</translation>
    </message>
</context>
<context>
    <name>fettle::AlertCount</name>
    <message>
        <source>Alerts between rounds (%1)</source>
        <translation>Alarme zwischen den Runden (%1)</translation>
    </message>
    <message>
        <source>open alert</source>
        <translation>offener Alarm</translation>
    </message>
    <message>
        <source>open alerts</source>
        <translation>offene Alarme</translation>
    </message>
    <message>
        <source>no open alert</source>
        <translation>kein offener Alarm</translation>
    </message>
</context>
<context>
    <name>fettle::AlertDeliveryForm</name>
    <message>
        <source>Mail server</source>
        <translation>Mailserver</translation>
    </message>
    <message>
        <source>Computer that takes mail; empty: no mail is sent</source>
        <translation>Rechner, der Mails annimmt; leer: es geht keine Mail hinaus</translation>
    </message>
    <message>
        <source>Login name at the mail server</source>
        <translation>Anmeldename am Mailserver</translation>
    </message>
    <message>
        <source>Empty: without a login</source>
        <translation>Leer: ohne Anmeldung</translation>
    </message>
    <message>
        <source>Where the password lies</source>
        <translation>Wo das Kennwort liegt</translation>
    </message>
    <message>
        <source>Certificates</source>
        <translation>Zertifikate</translation>
    </message>
    <message>
        <source>File with the certificate of an authority of one&apos;s own (PEM); empty: the system&apos;s</source>
        <translation>Datei mit dem Zertifikat einer eigenen Stelle (PEM); leer: die des Systems</translation>
    </message>
    <message>
        <source>Address mails come from</source>
        <translation>Absender der Mails</translation>
    </message>
    <message>
        <source>As in fettle@site.example</source>
        <translation>Etwa fettle@site.example</translation>
    </message>
    <message>
        <source>Addresses mails go to</source>
        <translation>Empfänger der Mails</translation>
    </message>
    <message>
        <source>Separated by commas; each gets a mail of its own</source>
        <translation>Durch Kommas getrennt; jeder bekommt eine eigene Mail</translation>
    </message>
    <message>
        <source>Program to run</source>
        <translation>Auszuführendes Programm</translation>
    </message>
    <message>
        <source>By its whole path; it reads the alert as JSON. Empty: none</source>
        <translation>Mit ganzem Pfad; es liest den Alarm als JSON. Leer: keines</translation>
    </message>
    <message>
        <source>Encryption</source>
        <translation>Verschlüsselung</translation>
    </message>
    <message>
        <source>Without encryption only to a server on this computer</source>
        <translation>Ohne Verschlüsselung nur zu einem Server auf diesem Rechner</translation>
    </message>
    <message>
        <source>Kind of place of the password</source>
        <translation>Art des Ortes für das Kennwort</translation>
    </message>
    <message>
        <source>The password itself is never kept in the fleet file</source>
        <translation>Das Kennwort selbst steht nie in der Flottendatei</translation>
    </message>
    <message>
        <source>Port of the mail server</source>
        <translation>Port des Mailservers</translation>
    </message>
    <message>
        <source>587 with STARTTLS, 465 with TLS</source>
        <translation>587 mit STARTTLS, 465 mit TLS</translation>
    </message>
    <message>
        <source>Mails an hour to one address</source>
        <translation>Mails je Stunde an einen Empfänger</translation>
    </message>
    <message>
        <source>What is more comes in one digest</source>
        <translation>Was darüber liegt, kommt in einer Übersicht</translation>
    </message>
    <message>
        <source>Seconds the program may take</source>
        <translation>Sekunden, die das Programm brauchen darf</translation>
    </message>
    <message>
        <source>Then it is ended with all it started</source>
        <translation>Danach wird es mit allem beendet, was es gestartet hat</translation>
    </message>
    <message>
        <source>Arguments of the program</source>
        <translation>Argumente des Programms</translation>
    </message>
    <message>
        <source>One a line, given as they stand; no shell reads them</source>
        <translation>Eines je Zeile, so weitergegeben; keine Shell liest sie</translation>
    </message>
    <message>
        <source>Quiet hours begin</source>
        <translation>Beginn der Ruhezeit</translation>
    </message>
    <message>
        <source>Time of the site. Between these only rules that say so send</source>
        <translation>Ortszeit des Standorts. Dazwischen senden nur Regeln, die es ausdrücklich sollen</translation>
    </message>
    <message>
        <source>Quiet hours end</source>
        <translation>Ende der Ruhezeit</translation>
    </message>
    <message>
        <source>Time of the site. The same as the beginning: no quiet hours</source>
        <translation>Ortszeit des Standorts. Wie der Beginn: keine Ruhezeit</translation>
    </message>
    <message>
        <source>Daily digest</source>
        <translation>Tagesübersicht</translation>
    </message>
    <message>
        <source>Time of the site</source>
        <translation>Ortszeit des Standorts</translation>
    </message>
    <message>
        <source>&amp;Save delivery</source>
        <translation>Versand &amp;speichern</translation>
    </message>
    <message>
        <source>Save delivery</source>
        <translation>Versand speichern</translation>
    </message>
    <message>
        <source>Keep what is typed and allow this computer to send it</source>
        <translation>Das Eingetippte behalten und diesem Rechner das Senden erlauben</translation>
    </message>
    <message>
        <source>Send a &amp;test</source>
        <translation>&amp;Probe senden</translation>
    </message>
    <message>
        <source>Send a test</source>
        <translation>Probe senden</translation>
    </message>
    <message>
        <source>A message that says it is a test, to every address and the program, as saved</source>
        <translation>Eine Nachricht, die sich als Probe ausweist, an jeden Empfänger und das Programm, wie gespeichert</translation>
    </message>
    <message>
        <source>STARTTLS</source>
        <translation>STARTTLS</translation>
    </message>
    <message>
        <source>TLS from the first byte</source>
        <translation>TLS vom ersten Byte an</translation>
    </message>
    <message>
        <source>none, this computer alone</source>
        <translation>keine, nur dieser Rechner</translation>
    </message>
    <message>
        <source>no password</source>
        <translation>kein Kennwort</translation>
    </message>
    <message>
        <source>in a file only you may read</source>
        <translation>in einer Datei, die nur ich lesen darf</translation>
    </message>
    <message>
        <source>in an environment variable</source>
        <translation>in einer Umgebungsvariablen</translation>
    </message>
    <message>
        <source>printed by a program</source>
        <translation>von einem Programm ausgegeben</translation>
    </message>
    <message>
        <source> an hour</source>
        <translation> je Stunde</translation>
    </message>
    <message>
        <source>Login name</source>
        <translation>Anmeldename</translation>
    </message>
    <message>
        <source>Password</source>
        <translation>Kennwort</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>To</source>
        <translation>An</translation>
    </message>
    <message>
        <source> s</source>
        <translation> s</translation>
    </message>
    <message>
        <source>Program</source>
        <translation>Programm</translation>
    </message>
    <message>
        <source>Arguments</source>
        <translation>Argumente</translation>
    </message>
    <message>
        <source>Quiet hours</source>
        <translation>Ruhezeit</translation>
    </message>
    <message>
        <source>Digest at</source>
        <translation>Übersicht um</translation>
    </message>
    <message>
        <source>This was set by another user or on another computer: nothing is sent from here until you save it.</source>
        <translation>Das hat jemand anders oder ein anderer Rechner eingestellt: Von hier geht nichts hinaus, bis es hier gespeichert wird.</translation>
    </message>
    <message>
        <source>Not sent yet, tries: %1. %2</source>
        <translation>Noch nicht gesendet, Versuche: %1. %2</translation>
    </message>
    <message>
        <source>Nothing is sent: alerts are listed here alone.</source>
        <translation>Es wird nichts gesendet: Alarme stehen nur hier.</translation>
    </message>
    <message>
        <source>Kept.</source>
        <translation>Gespeichert.</translation>
    </message>
    <message>
        <source>The test was taken everywhere.</source>
        <translation>Die Probe wurde überall angenommen.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>The test is being sent.</source>
        <translation>Die Probe wird gesendet.</translation>
    </message>
    <message>
        <source>Path of the file, name of the variable, or the program with its arguments: words with blanks in them between double quotes, no shell reads them</source>
        <translation>Pfad der Datei, Name der Variablen oder das Programm mit seinen Argumenten: Wörter mit Leerzeichen zwischen doppelten Anführungszeichen; keine Shell liest sie</translation>
    </message>
    <message>
        <source>port </source>
        <translation>Port </translation>
    </message>
    <message>
        <source>at most </source>
        <translation>höchstens </translation>
    </message>
    <message>
        <source>to</source>
        <translation>bis</translation>
    </message>
</context>
<context>
    <name>fettle::AlertModel</name>
    <message>
        <source>state</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>what</source>
        <translation>was</translation>
    </message>
    <message>
        <source>since</source>
        <translation>seit</translation>
    </message>
    <message>
        <source>sent</source>
        <translation>gesendet</translation>
    </message>
</context>
<context>
    <name>fettle::AlertRulesForm</name>
    <message>
        <source>Name of the rule</source>
        <translation>Name der Regel</translation>
    </message>
    <message>
        <source>A new name makes a new rule, a name that is there changes that one</source>
        <translation>Ein neuer Name macht eine neue Regel, ein vorhandener ändert diese</translation>
    </message>
    <message>
        <source>Fault of the rule</source>
        <translation>Fehler der Regel</translation>
    </message>
    <message>
        <source>A fault key or how keys begin: bearing, gear_mesh; empty: any fault</source>
        <translation>Ein Fehlerschlüssel oder sein Anfang: bearing, gear_mesh; leer: jeder Fehler</translation>
    </message>
    <message>
        <source>Machine of the rule</source>
        <translation>Maschine der Regel</translation>
    </message>
    <message>
        <source>Tag of one machine; empty: all</source>
        <translation>Kennzeichen einer Maschine; leer: alle</translation>
    </message>
    <message>
        <source>Area of the rule</source>
        <translation>Bereich der Regel</translation>
    </message>
    <message>
        <source>One area; empty: all</source>
        <translation>Ein Bereich; leer: alle</translation>
    </message>
    <message>
        <source>What the rule looks at</source>
        <translation>Worauf die Regel sieht</translation>
    </message>
    <message>
        <source>Weight of a fault, zone or growth of a level, stage of a bearing, silence</source>
        <translation>Gewicht eines Fehlers, Zone oder Wachstum eines Pegels, Stadium eines Lagers, Schweigen</translation>
    </message>
    <message>
        <source>Zone or stage of the rule</source>
        <translation>Zone oder Stadium der Regel</translation>
    </message>
    <message>
        <source>From this zone or stage on</source>
        <translation>Ab dieser Zone oder diesem Stadium</translation>
    </message>
    <message>
        <source>Criticality of the rule</source>
        <translation>Kritikalität der Regel</translation>
    </message>
    <message>
        <source>Machines of one criticality, or all</source>
        <translation>Maschinen einer Kritikalität oder alle</translation>
    </message>
    <message>
        <source>How the alert is sent</source>
        <translation>Wie der Alarm gesendet wird</translation>
    </message>
    <message>
        <source>At once, after the quiet hours, with the daily digest, or not at all</source>
        <translation>Sofort, nach den Ruhezeiten, mit der Tagesübersicht oder gar nicht</translation>
    </message>
    <message>
        <source>Least value of the rule</source>
        <translation>Kleinster Wert der Regel</translation>
    </message>
    <message>
        <source>Least hours of silence</source>
        <translation>Kürzestes Schweigen in Stunden</translation>
    </message>
    <message>
        <source>Number of recordings</source>
        <translation>Zahl der Aufzeichnungen</translation>
    </message>
    <message>
        <source>In so many recordings; two at least, but zone D may alert on one</source>
        <translation>In so vielen Aufzeichnungen; mindestens zwei, nur Zone D darf auf eine hin alarmieren</translation>
    </message>
    <message>
        <source>Of so many recordings</source>
        <translation>Von so vielen Aufzeichnungen</translation>
    </message>
    <message>
        <source>Of the newest running recordings of a point that passed their sensor checks</source>
        <translation>Von den neuesten eines Messpunkts in Betrieb, die ihre Sensorprüfungen bestanden haben</translation>
    </message>
    <message>
        <source>the rule is asked</source>
        <translation>die Regel wird gefragt</translation>
    </message>
    <message>
        <source>The rule is asked</source>
        <translation>Die Regel wird gefragt</translation>
    </message>
    <message>
        <source>A rule that is off raises nothing and stays here</source>
        <translation>Eine abgeschaltete Regel meldet nichts und bleibt hier stehen</translation>
    </message>
    <message>
        <source>&amp;Save rule</source>
        <translation>Regel &amp;speichern</translation>
    </message>
    <message>
        <source>Save rule</source>
        <translation>Regel speichern</translation>
    </message>
    <message>
        <source>Keep the rule as typed</source>
        <translation>Die Regel wie eingetippt behalten</translation>
    </message>
    <message>
        <source>&amp;Remove rule</source>
        <translation>Regel &amp;entfernen</translation>
    </message>
    <message>
        <source>Remove rule</source>
        <translation>Regel entfernen</translation>
    </message>
    <message>
        <source>Take the chosen rule away</source>
        <translation>Die gewählte Regel wegnehmen</translation>
    </message>
    <message>
        <source>Rules of alerts</source>
        <translation>Alarmregeln</translation>
    </message>
    <message>
        <source>rule</source>
        <translation>Regel</translation>
    </message>
    <message>
        <source>alerts on</source>
        <translation>alarmiert bei</translation>
    </message>
    <message>
        <source>sent</source>
        <translation>gesendet</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
    <message>
        <source> h</source>
        <translation> h</translation>
    </message>
    <message>
        <source>of </source>
        <translation>von </translation>
    </message>
    <message>
        <source>all machines</source>
        <translation>alle Maschinen</translation>
    </message>
    <message>
        <source>all areas</source>
        <translation>alle Bereiche</translation>
    </message>
    <message>
        <source>any fault</source>
        <translation>jeder Fehler</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>Looks at</source>
        <translation>Sieht auf</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>At least</source>
        <translation>Mindestens</translation>
    </message>
    <message>
        <source>And at least</source>
        <translation>Und mindestens</translation>
    </message>
    <message>
        <source>In recordings</source>
        <translation>In Aufzeichnungen</translation>
    </message>
    <message>
        <source>Machine, area, criticality</source>
        <translation>Maschine, Bereich, Kritikalität</translation>
    </message>
    <message>
        <source>Sent</source>
        <translation>Gesendet</translation>
    </message>
    <message>
        <source>zone %1</source>
        <translation>Zone %1</translation>
    </message>
    <message>
        <source>early</source>
        <translation>früh</translation>
    </message>
    <message>
        <source>developed</source>
        <translation>entwickelt</translation>
    </message>
    <message>
        <source>late</source>
        <translation>spät</translation>
    </message>
    <message>
        <source> decibans</source>
        <translation> Deziban</translation>
    </message>
    <message>
        <source> % in a week</source>
        <translation> % in einer Woche</translation>
    </message>
    <message>
        <source> times its interval</source>
        <translation> mal ihr Abstand</translation>
    </message>
    <message>
        <source>%1 (off)</source>
        <translation>%1 (aus)</translation>
    </message>
    <message>
        <source>Kept; it is asked from the next recordings on.</source>
        <translation>Gespeichert; ab den nächsten Aufzeichnungen wird sie gefragt.</translation>
    </message>
    <message>
        <source>Decibans, percent in a week, or times the interval, by what the rule looks at; empty: as it says in grey</source>
        <translation>Deziban, Prozent in einer Woche oder Vielfaches des Abstands, je nachdem, worauf die Regel sieht; leer: wie es grau dasteht</translation>
    </message>
    <message>
        <source>Hours of silence at least, whatever the interval is; empty: the interval alone counts</source>
        <translation>Mindestens so viele Stunden Schweigen, wie auch immer der Abstand ist; leer: der Abstand allein zählt</translation>
    </message>
    <message>
        <source>no least number of hours</source>
        <translation>keine Mindestzahl an Stunden</translation>
    </message>
    <message>
        <source>after the first, ask for another at once; two that agree then alert</source>
        <translation>nach der ersten gleich eine weitere anfordern; stimmen zwei überein, gibt es Alarm</translation>
    </message>
    <message>
        <source>After the first, ask for another</source>
        <translation>Nach der ersten eine weitere anfordern</translation>
    </message>
    <message>
        <source>When one recording alone shows it, the sensor is asked for another instead of waiting for its next; when that one shows it too, the alert is raised, whatever number is set here</source>
        <translation>Zeigt es eine einzige Aufzeichnung, wird der Sensor um eine weitere gebeten, statt auf seine nächste zu warten; zeigt auch diese es, wird der Alarm ausgelöst, welche Zahl hier auch steht</translation>
    </message>
    <message>
        <source>Ne&amp;w rule</source>
        <translation>&amp;Neue Regel</translation>
    </message>
    <message>
        <source>New rule</source>
        <translation>Neue Regel</translation>
    </message>
    <message>
        <source>Empties the fields for a rule of a new name</source>
        <translation>Leert die Felder für eine Regel mit neuem Namen</translation>
    </message>
    <message>
        <source>From zone</source>
        <translation>Ab Zone</translation>
    </message>
    <message>
        <source>From stage</source>
        <translation>Ab Stadium</translation>
    </message>
    <message>
        <source>Give the new rule a name, then save it.</source>
        <translation>Der neuen Regel einen Namen geben, dann speichern.</translation>
    </message>
</context>
<context>
    <name>fettle::AlertsDialog</name>
    <message>
        <source>&amp;Cleared ones too</source>
        <translation>Auch &amp;erledigte</translation>
    </message>
    <message>
        <source>Alerts between rounds</source>
        <translation>Alarme zwischen den Runden</translation>
    </message>
    <message>
        <source>Alerts, rules, delivery</source>
        <translation>Alarme, Regeln, Versand</translation>
    </message>
    <message>
        <source>A&amp;lerts</source>
        <translation>&amp;Alarme</translation>
    </message>
    <message>
        <source>R&amp;ules</source>
        <translation>&amp;Regeln</translation>
    </message>
    <message>
        <source>Deli&amp;very</source>
        <translation>&amp;Versand</translation>
    </message>
    <message>
        <source>Alerts</source>
        <translation>Alarme</translation>
    </message>
    <message>
        <source>what was seen or done</source>
        <translation>was gesehen oder getan wurde</translation>
    </message>
    <message>
        <source>Why the alert is acknowledged</source>
        <translation>Warum der Alarm quittiert wird</translation>
    </message>
    <message>
        <source>Kept with the alert; needed to acknowledge it</source>
        <translation>Bleibt beim Alarm; zum Quittieren nötig</translation>
    </message>
    <message>
        <source>Also those that were acknowledged and are over</source>
        <translation>Auch die quittierten, die vorüber sind</translation>
    </message>
    <message>
        <source>Ac&amp;knowledge</source>
        <translation>&amp;Quittieren</translation>
    </message>
    <message>
        <source>You have seen to the chosen alert (Ctrl+Return)</source>
        <translation>Um den gewählten Alarm hat man sich gekümmert (Strg+Eingabe)</translation>
    </message>
    <message>
        <source>&amp;Open machine</source>
        <translation>Maschine ö&amp;ffnen</translation>
    </message>
    <message>
        <source>Its machine, at the place and fault (Return)</source>
        <translation>Seine Maschine, an Ort und Fehler (Eingabe)</translation>
    </message>
    <message>
        <source>Check &amp;now</source>
        <translation>&amp;Jetzt prüfen</translation>
    </message>
    <message>
        <source>Ask the rules of every machine, silence too</source>
        <translation>Die Regeln über jede Maschine befragen, auch das Schweigen</translation>
    </message>
    <message>
        <source>No alert stands. Rules are asked when recordings come in; none alerts on one recording but zone D.</source>
        <translation>Kein Alarm steht. Regeln werden gefragt, wenn Aufzeichnungen kommen; auf eine einzige hin alarmiert nur Zone D.</translation>
    </message>
    <message>
        <source>An alert stands until somebody has seen to it and it is over. It is told again when it grows.</source>
        <translation>Ein Alarm steht, bis sich jemand darum gekümmert hat und er vorüber ist. Wächst er, wird er noch einmal gemeldet.</translation>
    </message>
    <message>
        <source>%1, rule %2: %3</source>
        <translation>%1, Regel %2: %3</translation>
    </message>
    <message>
        <source>Not seen since %1.</source>
        <translation>Nicht mehr gesehen seit %1.</translation>
    </message>
    <message>
        <source>Say first what was seen or done; it is kept with the alert.</source>
        <translation>Erst sagen, was gesehen oder getan wurde; es bleibt beim Alarm.</translation>
    </message>
    <message>
        <source>%1 looked at: %2 raised, %3 grown, %4 over.</source>
        <translation>%1 angesehen: %2 ausgelöst, %3 gewachsen, %4 vorüber.</translation>
    </message>
    <message>
        <source>machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>machines</source>
        <translation>Maschinen</translation>
    </message>
</context>
<context>
    <name>fettle::AlikeDialog</name>
    <message>
        <source>the machines were changed on</source>
        <translation>die Maschinen wurden geändert am</translation>
    </message>
    <message>
        <source>&amp;Set</source>
        <translation>&amp;Setzen</translation>
    </message>
    <message>
        <source>Set one value for several machines</source>
        <translation>Einen Wert für mehrere Maschinen setzen</translation>
    </message>
    <message>
        <source>Field</source>
        <translation>Feld</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>Find machines</source>
        <translation>Maschinen suchen</translation>
    </message>
    <message>
        <source>Why it changed</source>
        <translation>Grund der Änderung</translation>
    </message>
    <message>
        <source>Machines</source>
        <translation>Maschinen</translation>
    </message>
    <message>
        <source>Valid from</source>
        <translation>Gültig ab</translation>
    </message>
    <message>
        <source>Set</source>
        <translation>Setzen</translation>
    </message>
    <message>
        <source>An empty value takes the field away.</source>
        <translation>Ein leerer Wert entfernt das Feld.</translation>
    </message>
    <message>
        <source>find: tag, area, service</source>
        <translation>suchen: Kennzeichen, Bereich, Aufgabe</translation>
    </message>
    <message>
        <source>&amp;Field</source>
        <translation>&amp;Feld</translation>
    </message>
    <message>
        <source>&amp;Value</source>
        <translation>&amp;Wert</translation>
    </message>
    <message>
        <source>&amp;Why</source>
        <translation>&amp;Grund</translation>
    </message>
    <message>
        <source>&amp;Tick all shown</source>
        <translation>&amp;Alle gezeigten ankreuzen</translation>
    </message>
    <message>
        <source>%1 ticked. What a machine&apos;s description does not allow is listed and left.</source>
        <translation>%1 angekreuzt. Was die Beschreibung einer Maschine nicht zulässt, wird aufgeführt und bleibt unverändert.</translation>
    </message>
</context>
<context>
    <name>fettle::AskModel</name>
    <message>
        <source>open</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>dropped</source>
        <translation>verworfen</translation>
    </message>
    <message>
        <source>dropped: %1</source>
        <translation>verworfen: %1</translation>
    </message>
    <message>
        <source>answered by recording %1</source>
        <translation>beantwortet durch Aufzeichnung %1</translation>
    </message>
    <message>
        <source>answered by hand</source>
        <translation>von Hand beantwortet</translation>
    </message>
    <message>
        <source>answered by hand: %1</source>
        <translation>von Hand beantwortet: %1</translation>
    </message>
    <message>
        <source>hand</source>
        <translation>Hand</translation>
    </message>
    <message>
        <source>node</source>
        <translation>Knoten</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>with a tachometer: %1</source>
        <translation>mit Drehzahlgeber: %1</translation>
    </message>
    <message>
        <source>area</source>
        <translation>Bereich</translation>
    </message>
    <message>
        <source>machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>by</source>
        <translation>von</translation>
    </message>
    <message>
        <source>where</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>length, s</source>
        <translation>Länge, s</translation>
    </message>
    <message>
        <source>band to, %1</source>
        <translation>Band bis, %1</translation>
    </message>
    <message>
        <source>lines</source>
        <translation>Linien</translation>
    </message>
    <message>
        <source>why</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>asked</source>
        <translation>angefordert</translation>
    </message>
    <message>
        <source>state</source>
        <translation>Stand</translation>
    </message>
</context>
<context>
    <name>fettle::AsksDialog</name>
    <message>
        <source>&amp;Answered and dropped ones too</source>
        <translation>&amp;Auch beantwortete und verworfene</translation>
    </message>
    <message>
        <source>Asked for</source>
        <translation>Angefordert</translation>
    </message>
    <message>
        <source>Also what is no longer open, with what became of it</source>
        <translation>Auch nicht mehr offene, mit ihrem Verbleib</translation>
    </message>
    <message>
        <source>Recordings asked for</source>
        <translation>Angeforderte Aufzeichnungen</translation>
    </message>
    <message>
        <source>what was seen, or why it is dropped</source>
        <translation>was zu sehen war oder warum sie verworfen wird</translation>
    </message>
    <message>
        <source>Note to the chosen one</source>
        <translation>Notiz zur gewählten</translation>
    </message>
    <message>
        <source>A&amp;nswered</source>
        <translation>&amp;Beantwortet</translation>
    </message>
    <message>
        <source>The chosen one was answered without a recording</source>
        <translation>Die gewählte wurde ohne Aufzeichnung beantwortet</translation>
    </message>
    <message>
        <source>&amp;Drop</source>
        <translation>&amp;Verwerfen</translation>
    </message>
    <message>
        <source>The chosen one is no longer wanted</source>
        <translation>Die gewählte wird nicht mehr gebraucht</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>The list as a leaf to walk with</source>
        <translation>Die Liste als Blatt für den Rundgang</translation>
    </message>
    <message>
        <source>&amp;CSV…</source>
        <translation>&amp;CSV…</translation>
    </message>
    <message>
        <source>The list for a spreadsheet or an instrument</source>
        <translation>Die Liste für Tabellenrechnung oder Messgerät</translation>
    </message>
    <message>
        <source>&amp;JSON…</source>
        <translation>&amp;JSON…</translation>
    </message>
    <message>
        <source>The list for other programs</source>
        <translation>Die Liste für andere Programme</translation>
    </message>
    <message>
        <source>CSV (*.csv)</source>
        <translation>CSV (*.csv)</translation>
    </message>
    <message>
        <source>JSON (*.json)</source>
        <translation>JSON (*.json)</translation>
    </message>
    <message>
        <source>Nothing is asked for. A machine&apos;s evidence panel suggests what would settle its findings; Ask puts it here.</source>
        <translation>Nichts angefordert. Unter Belege einer Maschine steht, was ihre Befunde klären würde; Anfordern stellt es hierher.</translation>
    </message>
    <message>
        <source>%1 in the order of the walk. A recording that comes in and brings what it says answers it by itself.</source>
        <translation>%1 in der Reihenfolge des Rundgangs. Eine eintreffende Aufzeichnung, die das Verlangte bringt, beantwortet sie von selbst.</translation>
    </message>
    <message>
        <source>%1, %2: %3; %4. Asked by %5.</source>
        <translation>%1, %2: %3; %4. Angefordert von %5.</translation>
    </message>
    <message>
        <source>Saved as %1.</source>
        <translation>Gespeichert als %1.</translation>
    </message>
    <message>
        <source>Save what is asked for</source>
        <translation>Angefordertes speichern</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceDialog</name>
    <message>
        <source>Balance %1</source>
        <translation>Auswuchten: %1</translation>
    </message>
    <message>
        <source>Name of this balancing</source>
        <translation>Name dieser Auswuchtung</translation>
    </message>
    <message>
        <source>Balancings kept</source>
        <translation>Abgelegte Auswuchtungen</translation>
    </message>
    <message>
        <source>Open one again; what is closed can be read and printed</source>
        <translation>Eine wieder öffnen; abgeschlossene lassen sich lesen und drucken</translation>
    </message>
    <message>
        <source>&amp;Name</source>
        <translation>&amp;Name</translation>
    </message>
    <message>
        <source>&amp;Back</source>
        <translation>&amp;Zurück</translation>
    </message>
    <message>
        <source>The step before</source>
        <translation>Der Schritt davor</translation>
    </message>
    <message>
        <source>Ne&amp;xt</source>
        <translation>&amp;Weiter</translation>
    </message>
    <message>
        <source>The step after</source>
        <translation>Der Schritt danach</translation>
    </message>
    <message>
        <source>Save as &amp;PDF…</source>
        <translation>Als &amp;PDF speichern…</translation>
    </message>
    <message>
        <source>The record as a page</source>
        <translation>Das Protokoll als Seite</translation>
    </message>
    <message>
        <source>Save the balance record</source>
        <translation>Auswuchtprotokoll speichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>P&amp;rint…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>The record on paper</source>
        <translation>Das Protokoll auf Papier</translation>
    </message>
    <message>
        <source>&amp;Keep</source>
        <translation>&amp;Ablegen</translation>
    </message>
    <message>
        <source>Into the fleet file, to be gone on with</source>
        <translation>In die Flottendatei, zum Weiterarbeiten</translation>
    </message>
    <message>
        <source>&amp;Close the job…</source>
        <translation>Auftrag ab&amp;schließen…</translation>
    </message>
    <message>
        <source>Keep it for good: it does not change any more, and its coefficients serve later jobs</source>
        <translation>Endgültig ablegen: ändert sich nicht mehr, und die Koeffizienten dienen späteren Aufträgen</translation>
    </message>
    <message>
        <source>Leave</source>
        <translation>Verlassen</translation>
    </message>
    <message>
        <source>Close this window</source>
        <translation>Dieses Fenster schließen</translation>
    </message>
    <message>
        <source>a new balancing</source>
        <translation>neue Auswuchtung</translation>
    </message>
    <message>
        <source>%1, closed %2</source>
        <translation>%1, abgeschlossen %2</translation>
    </message>
    <message>
        <source>%1, in work, %2</source>
        <translation>%1, in Arbeit, %2</translation>
    </message>
    <message>
        <source>%1 balanced %2</source>
        <translation>%1 ausgewuchtet %2</translation>
    </message>
    <message>
        <source>Fit %1.</source>
        <translation>%1 anbringen.</translation>
    </message>
    <message>
        <source>Fit %1 and %2.</source>
        <translation>%1 und %2 anbringen.</translation>
    </message>
    <message>
        <source>%1 is closed and kept.</source>
        <translation>%1 ist abgeschlossen und abgelegt.</translation>
    </message>
    <message>
        <source>%1 is kept.</source>
        <translation>%1 ist abgelegt.</translation>
    </message>
    <message>
        <source>Close the job</source>
        <translation>Auftrag abschließen</translation>
    </message>
    <message>
        <source>A closed balancing does not change any more. Its coefficients serve later jobs of this machine, and 1x is told in grams from then on. Close it?</source>
        <translation>Eine abgeschlossene Auswuchtung ändert sich nicht mehr. Ihre Koeffizienten dienen späteren Aufträgen dieser Maschine, und 1x wird ab dann in Gramm angegeben. Abschließen?</translation>
    </message>
    <message>
        <source>Leave the balancing</source>
        <translation>Auswuchtung verlassen</translation>
    </message>
    <message>
        <source>What was typed is not kept yet.</source>
        <translation>Die Eingaben sind noch nicht abgelegt.</translation>
    </message>
    <message>
        <source>Saved as %1.</source>
        <translation>Gespeichert als %1.</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceField</name>
    <message>
        <source>%1, in %2</source>
        <translation>%1, in %2</translation>
    </message>
    <message>
        <source>This is not a number.</source>
        <translation>Das ist keine Zahl.</translation>
    </message>
    <message>
        <source>Must be from %1 to %2.</source>
        <translation>Muss zwischen %1 und %2 liegen.</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceMassesStep</name>
    <message>
        <source>Masses to fit and what is left</source>
        <translation>Anzubringende Massen und Rest</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceReadings</name>
    <message>
        <source>%1, amount, reading %2</source>
        <translation>%1, Betrag, Ablesung %2</translation>
    </message>
    <message>
        <source>%1, phase in degrees, reading %2</source>
        <translation>%1, Phase in Grad, Ablesung %2</translation>
    </message>
    <message>
        <source>Amounts must be numbers from 0 on, phases degrees.</source>
        <translation>Beträge müssen Zahlen ab 0 sein, Phasen Grad.</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceRecordingDialog</name>
    <message>
        <source>Readings from a recording</source>
        <translation>Ablesungen aus einer Aufzeichnung</translation>
    </message>
    <message>
        <source>Read</source>
        <translation>Ablesen</translation>
    </message>
    <message>
        <source>Recordings of this machine that hold two channels or more</source>
        <translation>Aufzeichnungen dieser Maschine mit zwei oder mehr Kanälen</translation>
    </message>
    <message>
        <source>The channel of the once-per-turn pick-up</source>
        <translation>Der Kanal des Markengebers (ein Impuls je Umdrehung)</translation>
    </message>
    <message>
        <source>1x is read against the pulses of the mark, turn by turn; five stretches of the recording stand as repeat readings.</source>
        <translation>1x wird gegen die Impulse der Marke abgelesen, Umdrehung für Umdrehung; fünf Abschnitte der Aufzeichnung gelten als Wiederholablesungen.</translation>
    </message>
    <message>
        <source>%1, point %2</source>
        <translation>%1, Punkt %2</translation>
    </message>
    <message>
        <source>Recording</source>
        <translation>Aufzeichnung</translation>
    </message>
    <message>
        <source>Once-per-turn channel</source>
        <translation>Kanal des Markengebers</translation>
    </message>
    <message>
        <source>The channel that is this sensor</source>
        <translation>Der Kanal, der dieser Sensor ist</translation>
    </message>
    <message>
        <source>No recording of this machine holds two channels: import one with the pick-up&apos;s channel, or type the readings.</source>
        <translation>Keine Aufzeichnung dieser Maschine hat zwei Kanäle: eine mit dem Kanal des Markengebers einlesen oder die Ablesungen eintippen.</translation>
    </message>
    <message>
        <source>Recordings give velocities: choose mm/s or in/s as unit of this job.</source>
        <translation>Aufzeichnungen liefern Schwinggeschwindigkeiten: mm/s oder in/s als Einheit dieses Auftrags wählen.</translation>
    </message>
    <message>
        <source>the recording of %1</source>
        <translation>die Aufzeichnung vom %1</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceRotorStep</name>
    <message>
        <source>Rotor, planes and sensors</source>
        <translation>Rotor, Ebenen und Sensoren</translation>
    </message>
    <message>
        <source>Method</source>
        <translation>Verfahren</translation>
    </message>
    <message>
        <source>One plane, with phase</source>
        <translation>Eine Ebene, mit Phase</translation>
    </message>
    <message>
        <source>Two planes, with phase</source>
        <translation>Zwei Ebenen, mit Phase</translation>
    </message>
    <message>
        <source>One plane, four runs without phase</source>
        <translation>Eine Ebene, vier Läufe ohne Phase</translation>
    </message>
    <message>
        <source>With phase: a once-per-turn mark and its phase. Without: four amounts and three places of one trial mass.</source>
        <translation>Mit Phase: eine Marke je Umdrehung und deren Phase. Ohne: vier Beträge und drei Plätze einer Testmasse.</translation>
    </message>
    <message>
        <source>What a gram does</source>
        <translation>Wirkung eines Gramms</translation>
    </message>
    <message>
        <source>Learnt by trial runs, or taken from a closed balancing of this machine</source>
        <translation>Aus Testläufen gelernt oder aus einer abgeschlossenen Auswuchtung dieser Maschine übernommen</translation>
    </message>
    <message>
        <source>Trial masses</source>
        <translation>Testmassen</translation>
    </message>
    <message>
        <source>taken off again</source>
        <translation>wieder abgenommen</translation>
    </message>
    <message>
        <source>left on</source>
        <translation>bleiben dran</translation>
    </message>
    <message>
        <source>Whether a trial mass stays on the rotor for the next run</source>
        <translation>Ob eine Testmasse für den nächsten Lauf am Rotor bleibt</translation>
    </message>
    <message>
        <source>Turns, as seen</source>
        <translation>Drehsinn, gesehen</translation>
    </message>
    <message>
        <source>clockwise</source>
        <translation>im Uhrzeigersinn</translation>
    </message>
    <message>
        <source>anticlockwise</source>
        <translation>gegen den Uhrzeigersinn</translation>
    </message>
    <message>
        <source>Sense of rotation seen from the stated side</source>
        <translation>Drehsinn, von der angegebenen Seite gesehen</translation>
    </message>
    <message>
        <source>Seen from the</source>
        <translation>Blick von</translation>
    </message>
    <message>
        <source>The side everybody looks from, like: coupling side</source>
        <translation>Die Seite, von der alle schauen, etwa: Kupplungsseite</translation>
    </message>
    <message>
        <source>Places are counted</source>
        <translation>Plätze zählen</translation>
    </message>
    <message>
        <source>against the rotation</source>
        <translation>gegen die Drehrichtung</translation>
    </message>
    <message>
        <source>with the rotation</source>
        <translation>in Drehrichtung</translation>
    </message>
    <message>
        <source>From the mark on the rotor, see the drawing</source>
        <translation>Ab der Marke am Rotor, siehe Zeichnung</translation>
    </message>
    <message>
        <source>Phase is a</source>
        <translation>Phase ist</translation>
    </message>
    <message>
        <source>lag: mark first, then the peak</source>
        <translation>Nacheilung: erst Marke, dann Spitze</translation>
    </message>
    <message>
        <source>lead: peak first, then the mark</source>
        <translation>Voreilung: erst Spitze, dann Marke</translation>
    </message>
    <message>
        <source>As the instrument gives it; readings from recordings are lags</source>
        <translation>Wie das Messgerät sie angibt; Ablesungen aus Aufzeichnungen sind Nacheilungen</translation>
    </message>
    <message>
        <source>Rotor of the</source>
        <translation>Rotor von</translation>
    </message>
    <message>
        <source>Which rotor is balanced; speed and grade follow</source>
        <translation>Welcher Rotor ausgewuchtet wird; Drehzahl und Gütestufe folgen daraus</translation>
    </message>
    <message>
        <source>motor</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>driven machine</source>
        <translation>Arbeitsmaschine</translation>
    </message>
    <message>
        <source>Rotor mass</source>
        <translation>Rotormasse</translation>
    </message>
    <message>
        <source>kg</source>
        <translation>kg</translation>
    </message>
    <message>
        <source>Speed</source>
        <translation>Drehzahl</translation>
    </message>
    <message>
        <source>r/min</source>
        <translation>r/min</translation>
    </message>
    <message>
        <source>Balance grade</source>
        <translation>Gütestufe</translation>
    </message>
    <message>
        <source>ISO 21940-11, from memory: motors to 950 r/min or under 80 mm shaft height G 6.3, other motors G 2.5, fans and pumps G 6.3</source>
        <translation>ISO 21940-11, aus dem Gedächtnis: Motoren bis 950 r/min oder unter 80 mm Achshöhe G 6.3, andere Motoren G 2.5, Ventilatoren und Pumpen G 6.3</translation>
    </message>
    <message>
        <source>Vibration in</source>
        <translation>Schwingung in</translation>
    </message>
    <message>
        <source>One unit for all readings of this job</source>
        <translation>Eine Einheit für alle Ablesungen dieses Auftrags</translation>
    </message>
    <message>
        <source>Plane %1</source>
        <translation>Ebene %1</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>As people on the floor call it</source>
        <translation>Wie man sie vor Ort nennt</translation>
    </message>
    <message>
        <source>Radius of the masses</source>
        <translation>Radius der Massen</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>From the centre of mass</source>
        <translation>Ab dem Massenmittelpunkt</translation>
    </message>
    <message>
        <source>Masses already there</source>
        <translation>Bereits vorhandene Massen</translation>
    </message>
    <message>
        <source>Grams at degrees, like: 12 @ 30; 5 @ 200 @ 390 with a radius of their own in mm</source>
        <translation>Gramm bei Grad, etwa: 12 @ 30; 5 @ 200 @ 390 mit eigenem Radius in mm</translation>
    </message>
    <message>
        <source>Places (holes, blades)</source>
        <translation>Plätze (Bohrungen, Schaufeln)</translation>
    </message>
    <message>
        <source>0 = any angle</source>
        <translation>0 = beliebiger Winkel</translation>
    </message>
    <message>
        <source>Place 1 at</source>
        <translation>Platz 1 bei</translation>
    </message>
    <message>
        <source>degrees</source>
        <translation>Grad</translation>
    </message>
    <message>
        <source>Places taken</source>
        <translation>Belegte Plätze</translation>
    </message>
    <message>
        <source>Numbers that can carry no mass, like: 3, 4</source>
        <translation>Nummern, die keine Masse tragen können, etwa: 3, 4</translation>
    </message>
    <message>
        <source>Most at one place</source>
        <translation>Höchstens je Platz</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>Masses come in steps of</source>
        <translation>Massen in Stufen von</translation>
    </message>
    <message>
        <source>Sensor %1</source>
        <translation>Sensor %1</translation>
    </message>
    <message>
        <source>Where it is read, like: DE horizontal</source>
        <translation>Wo abgelesen wird, etwa: DE horizontal</translation>
    </message>
    <message>
        <source>Same as the node&apos;s channel</source>
        <translation>Gleich dem Kanal des Knotens</translation>
    </message>
    <message>
        <source>If it is read where the node sits, later 1x of the node is told in grams</source>
        <translation>Wird am Sitz des Knotens abgelesen, erscheint 1x des Knotens später in Gramm</translation>
    </message>
    <message>
        <source>Stands at</source>
        <translation>Steht bei</translation>
    </message>
    <message>
        <source>none of them</source>
        <translation>keiner davon</translation>
    </message>
    <message>
        <source>by trial runs</source>
        <translation>durch Testläufe</translation>
    </message>
    <message>
        <source>as in %1, %2</source>
        <translation>wie in %1, %2</translation>
    </message>
    <message>
        <source>Permissible unbalance %1 g mm, offset of the centre of mass %2 µm</source>
        <translation>Zulässige Unwucht %1 g mm, Versatz des Massenmittelpunkts %2 µm</translation>
    </message>
    <message>
        <source>Trial mass at most %1 g: its force is a tenth of the weight (rule of thumb)</source>
        <translation>Testmasse höchstens %1 g: ihre Kraft ist ein Zehntel der Gewichtskraft (Faustregel)</translation>
    </message>
    <message>
        <source>Must be whole numbers with commas between.</source>
        <translation>Ganze Zahlen, durch Kommas getrennt.</translation>
    </message>
    <message>
        <source>Must be like: 12 @ 30; 5 @ 200.</source>
        <translation>Muss lauten wie: 12 @ 30; 5 @ 200.</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceRunBox</name>
    <message>
        <source>Run 0: as found</source>
        <translation>Lauf 0: vorgefunden</translation>
    </message>
    <message>
        <source>Check run: with the correction fitted</source>
        <translation>Kontrolllauf: mit angebrachtem Ausgleich</translation>
    </message>
    <message>
        <source>Run %1: the trial mass at place %1 of 3</source>
        <translation>Lauf %1: Testmasse auf Platz %1 von 3</translation>
    </message>
    <message>
        <source>Run %1: trial mass in %2</source>
        <translation>Lauf %1: Testmasse in %2</translation>
    </message>
    <message>
        <source>Trial mass</source>
        <translation>Testmasse</translation>
    </message>
    <message>
        <source>g at</source>
        <translation>g bei</translation>
    </message>
    <message>
        <source>Place of the trial mass</source>
        <translation>Platz der Testmasse</translation>
    </message>
    <message>
        <source>degrees</source>
        <translation>Grad</translation>
    </message>
    <message>
        <source>Speed of this run</source>
        <translation>Drehzahl dieses Laufs</translation>
    </message>
    <message>
        <source>r/min</source>
        <translation>r/min</translation>
    </message>
    <message>
        <source>Load of this run</source>
        <translation>Last dieses Laufs</translation>
    </message>
    <message>
        <source>% load</source>
        <translation>% Last</translation>
    </message>
    <message>
        <source>From a recording…</source>
        <translation>Aus einer Aufzeichnung…</translation>
    </message>
    <message>
        <source>Reads 1x against the once-per-turn channel of a recording in the fleet file</source>
        <translation>Liest 1x gegen den Markengeberkanal einer Aufzeichnung der Flottendatei ab</translation>
    </message>
    <message>
        <source>Taken from %1.</source>
        <translation>Übernommen aus %1.</translation>
    </message>
</context>
<context>
    <name>fettle::BalanceRunsStep</name>
    <message>
        <source>Runs</source>
        <translation>Läufe</translation>
    </message>
    <message>
        <source>&amp;Add the check run</source>
        <translation>&amp;Kontrolllauf hinzufügen</translation>
    </message>
    <message>
        <source>With the correction fitted: what is left, and whether the grade is reached</source>
        <translation>Mit angebrachtem Ausgleich: was bleibt und ob die Gütestufe erreicht ist</translation>
    </message>
</context>
<context>
    <name>fettle::BearingFinderDialog</name>
    <message>
        <source>outer race</source>
        <translation>Außenring</translation>
    </message>
    <message>
        <source>inner race</source>
        <translation>Innenring</translation>
    </message>
    <message>
        <source>rolling element, twice its spin</source>
        <translation>Wälzkörper, doppelte Eigendrehung</translation>
    </message>
    <message>
        <source>cage</source>
        <translation>Käfig</translation>
    </message>
    <message>
        <source>%1 x %2</source>
        <translation>%1 x %2</translation>
    </message>
    <message>
        <source>not in the table</source>
        <translation>nicht in der Tabelle</translation>
    </message>
    <message>
        <source>%1 x %2 mm on %3 mm</source>
        <translation>%1 x %2 mm auf %3 mm</translation>
    </message>
    <message>
        <source>&amp;Put into the form</source>
        <translation>Ins &amp;Formular</translation>
    </message>
    <message>
        <source>Put &amp;designation alone</source>
        <translation>&amp;Nur Bezeichnung</translation>
    </message>
    <message>
        <source>Find a bearing</source>
        <translation>Lager suchen</translation>
    </message>
    <message>
        <source>any</source>
        <translation>beliebig</translation>
    </message>
    <message>
        <source>Part of the designation</source>
        <translation>Teil der Bezeichnung</translation>
    </message>
    <message>
        <source>6316, NU 3 …</source>
        <translation>6316, NU 3 …</translation>
    </message>
    <message>
        <source>Bore in mm</source>
        <translation>Bohrung in mm</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>Outside diameter in mm</source>
        <translation>Außendurchmesser in mm</translation>
    </message>
    <message>
        <source>Width in mm</source>
        <translation>Breite in mm</translation>
    </message>
    <message>
        <source>Order of the bearing&apos;s shaft</source>
        <translation>Ordnung der Welle des Lagers</translation>
    </message>
    <message>
        <source>Line found in a spectrum, in %1</source>
        <translation>Im Spektrum gefundene Linie, in %1</translation>
    </message>
    <message>
        <source>Speed of the bearing&apos;s shaft in r/min</source>
        <translation>Drehzahl der Welle des Lagers in r/min</translation>
    </message>
    <message>
        <source>r/min</source>
        <translation>r/min</translation>
    </message>
    <message>
        <source>How far the line may be off, in per cent</source>
        <translation>Zulässige Abweichung der Linie in Prozent</translation>
    </message>
    <message>
        <source>%</source>
        <translation>%</translation>
    </message>
    <message>
        <source>D&amp;esignation</source>
        <translation>B&amp;ezeichnung</translation>
    </message>
    <message>
        <source>&amp;Bore</source>
        <translation>&amp;Bohrung</translation>
    </message>
    <message>
        <source>&amp;Outside</source>
        <translation>&amp;Außen</translation>
    </message>
    <message>
        <source>W&amp;idth</source>
        <translation>B&amp;reite</translation>
    </message>
    <message>
        <source>O&amp;rder</source>
        <translation>&amp;Ordnung</translation>
    </message>
    <message>
        <source>or &amp;line</source>
        <translation>oder &amp;Linie</translation>
    </message>
    <message>
        <source>at &amp;speed</source>
        <translation>bei &amp;Drehzahl</translation>
    </message>
    <message>
        <source>wi&amp;thin</source>
        <translation>bis a&amp;uf</translation>
    </message>
    <message>
        <source>Bearings that fit</source>
        <translation>Passende Lager</translation>
    </message>
    <message>
        <source>Designation</source>
        <translation>Bezeichnung</translation>
    </message>
    <message>
        <source>Type</source>
        <translation>Bauart</translation>
    </message>
    <message>
        <source>Bore × outside × width, mm</source>
        <translation>Bohrung × außen × Breite, mm</translation>
    </message>
    <message>
        <source>Elements inside</source>
        <translation>Wälzkörper</translation>
    </message>
    <message>
        <source>Line that fits</source>
        <translation>Passende Linie</translation>
    </message>
    <message>
        <source>Slip</source>
        <translation>Schlupf</translation>
    </message>
    <message>
        <source>%1 lines of known builds lie within %2 % of order %3. Builds differ by maker: confirm on the plate or by the maker&apos;s data.</source>
        <translation>%1 Linien bekannter Ausführungen liegen innerhalb %2 % der Ordnung %3. Ausführungen sind je nach Hersteller verschieden: am Schild oder mit Herstellerdaten bestätigen.</translation>
    </message>
    <message>
        <source>%1 fit. Sizes by ISO 15; what is inside is typical and differs by maker: confirm it.</source>
        <translation>%1 passen. Maße nach ISO 15; das Innere ist typisch und je nach Hersteller verschieden: bestätigen.</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>%1, order %2</source>
        <translation>%1, Ordnung %2</translation>
    </message>
</context>
<context>
    <name>fettle::BeforeAfterDialog</name>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>%1 decibans</source>
        <translation>%1 Deziban</translation>
    </message>
    <message>
        <source>not weighed</source>
        <translation>nicht gewogen</translation>
    </message>
    <message>
        <source>cured</source>
        <translation>behoben</translation>
    </message>
    <message>
        <source>better</source>
        <translation>besser</translation>
    </message>
    <message>
        <source>unchanged</source>
        <translation>unverändert</translation>
    </message>
    <message>
        <source>worse</source>
        <translation>schlechter</translation>
    </message>
    <message>
        <source>another fault</source>
        <translation>anderer Fehler</translation>
    </message>
    <message>
        <source>not comparable</source>
        <translation>nicht vergleichbar</translation>
    </message>
    <message>
        <source>Before and after: %1</source>
        <translation>Vorher und nachher: %1</translation>
    </message>
    <message>
        <source>The event that parts before from after</source>
        <translation>Das Ereignis, das vorher von nachher trennt</translation>
    </message>
    <message>
        <source>Reading…</source>
        <translation>Wird gelesen…</translation>
    </message>
    <message>
        <source>Figures before and after</source>
        <translation>Werte vorher und nachher</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>Aim, at most</source>
        <translation>Ziel, höchstens</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
    <message>
        <source>Nothing was done to this machine yet. Note a repair, greasing or another event, and it is compared here.</source>
        <translation>An dieser Maschine wurde noch nichts getan. Eine Reparatur, Schmierung oder ein anderes Ereignis eintragen; hier wird es verglichen.</translation>
    </message>
    <message>
        <source>Comparing…</source>
        <translation>Wird verglichen…</translation>
    </message>
    <message>
        <source>%1 recordings of the week to %2 against %3 from %4 to %5, at like speed and load.</source>
        <translation>%1 Aufzeichnungen der Woche bis %2 gegen %3 von %4 bis %5, bei gleicher Drehzahl und Last.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Levels</source>
        <translation>Pegel</translation>
    </message>
    <message>
        <source>vibration</source>
        <translation>Schwingung</translation>
    </message>
    <message>
        <source>no limit</source>
        <translation>keine Grenze</translation>
    </message>
    <message>
        <source>weight</source>
        <translation>Gewicht</translation>
    </message>
    <message>
        <source>no baseline</source>
        <translation>kein Ausgangsband</translation>
    </message>
    <message>
        <source>Found now and not before</source>
        <translation>Jetzt gefunden, vorher nicht</translation>
    </message>
</context>
<context>
    <name>fettle::Cascade</name>
    <message>
        <source>Cascade of spectra</source>
        <translation>Kaskade der Spektren</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
</context>
<context>
    <name>fettle::CloseRoundDialog</name>
    <message>
        <source>Close the round</source>
        <translation>Runde abschließen</translation>
    </message>
    <message>
        <source>Every machine has its answer. A closed round is kept and never changes.</source>
        <translation>Jede Maschine hat ihre Antwort. Eine abgeschlossene Runde bleibt abgelegt und ändert sich nie.</translation>
    </message>
    <message>
        <source>The round can be closed when nothing is missing. It is kept then and never changes.</source>
        <translation>Die Runde lässt sich abschließen, wenn nichts fehlt. Dann bleibt sie abgelegt und ändert sich nie.</translation>
    </message>
</context>
<context>
    <name>fettle::ColourLegend</name>
    <message>
        <source>Strengths: %1; press to change, drag to move the ends</source>
        <translation>Stärken: %1; drücken zum Ändern, ziehen zum Verschieben der Enden</translation>
    </message>
    <message>
        <source>%1 to %2 %3</source>
        <translation>%1 bis %2 %3</translation>
    </message>
    <message>
        <source>Scale of the strengths</source>
        <translation>Skala der Stärken</translation>
    </message>
    <message>
        <source>decibels</source>
        <translation>Dezibel</translation>
    </message>
    <message>
        <source>linear</source>
        <translation>linear</translation>
    </message>
    <message>
        <source>&amp;Scale</source>
        <translation>&amp;Skala</translation>
    </message>
    <message>
        <source>Map of colours</source>
        <translation>Farbskala</translation>
    </message>
    <message>
        <source>blue to yellow</source>
        <translation>Blau bis Gelb</translation>
    </message>
    <message>
        <source>greys</source>
        <translation>Graustufen</translation>
    </message>
    <message>
        <source>&amp;Colours</source>
        <translation>&amp;Farben</translation>
    </message>
    <message>
        <source>Weakest strength shown</source>
        <translation>Schwächste gezeigte Stärke</translation>
    </message>
    <message>
        <source>Strongest strength shown</source>
        <translation>Stärkste gezeigte Stärke</translation>
    </message>
    <message>
        <source>Weakest, percentile of the data</source>
        <translation>Schwächste, Perzentil der Daten</translation>
    </message>
    <message>
        <source>Strongest, percentile of the data</source>
        <translation>Stärkste, Perzentil der Daten</translation>
    </message>
    <message>
        <source>&amp;Weakest</source>
        <translation>S&amp;chwächste</translation>
    </message>
    <message>
        <source>S&amp;trongest</source>
        <translation>S&amp;tärkste</translation>
    </message>
    <message>
        <source>Weakest, &amp;percentile</source>
        <translation>Schwächste, &amp;Perzentil</translation>
    </message>
    <message>
        <source>Strongest, p&amp;ercentile</source>
        <translation>Stärkste, P&amp;erzentil</translation>
    </message>
    <message>
        <source>By the &amp;data</source>
        <translation>Nach &amp;Daten</translation>
    </message>
</context>
<context>
    <name>fettle::CompareDialog</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1 on leave in both</source>
        <translation>%1 in beiden auf belassen</translation>
    </message>
    <message>
        <source>Compare two rounds</source>
        <translation>Zwei Runden vergleichen</translation>
    </message>
    <message>
        <source>Two kept rounds are needed; there is %1. Close this one and open the next.</source>
        <translation>Zwei abgelegte Runden sind nötig; vorhanden: %1. Diese abschließen und die nächste öffnen.</translation>
    </message>
    <message>
        <source>round</source>
        <translation>Runde</translation>
    </message>
    <message>
        <source>rounds</source>
        <translation>Runden</translation>
    </message>
    <message>
        <source>to %1</source>
        <translation>bis %1</translation>
    </message>
    <message>
        <source>The later round</source>
        <translation>Die spätere Runde</translation>
    </message>
    <message>
        <source>The round it is compared with</source>
        <translation>Die Runde, mit der verglichen wird</translation>
    </message>
    <message>
        <source>Machines that moved</source>
        <translation>Maschinen mit Veränderung</translation>
    </message>
    <message>
        <source>Round</source>
        <translation>Runde</translation>
    </message>
    <message>
        <source>against round</source>
        <translation>gegen Runde</translation>
    </message>
    <message>
        <source>Save the comparison</source>
        <translation>Vergleich speichern</translation>
    </message>
    <message>
        <source>&amp;Save as PDF…</source>
        <translation>Als &amp;PDF speichern…</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>&amp;CSV…</source>
        <translation>&amp;CSV…</translation>
    </message>
    <message>
        <source>CSV (*.csv)</source>
        <translation>CSV (*.csv)</translation>
    </message>
    <message>
        <source>Choose two different rounds.</source>
        <translation>Zwei verschiedene Runden wählen.</translation>
    </message>
</context>
<context>
    <name>fettle::CompareStrip</name>
    <message>
        <source>shown</source>
        <translation>gezeigt</translation>
    </message>
    <message>
        <source>other direction</source>
        <translation>andere Richtung</translation>
    </message>
    <message>
        <source>other end</source>
        <translation>anderes Ende</translation>
    </message>
    <message>
        <source>other part of the train</source>
        <translation>anderer Teil des Strangs</translation>
    </message>
    <message>
        <source>twin</source>
        <translation>Schwestermaschine</translation>
    </message>
    <message>
        <source>Twins and train</source>
        <translation>Schwestermaschinen und Strang</translation>
    </message>
    <message>
        <source>Where is it largest?</source>
        <translation>Wo am größten?</translation>
    </message>
    <message>
        <source>Quantity that is compared</source>
        <translation>Verglichene Größe</translation>
    </message>
    <message>
        <source>velocity r.m.s.</source>
        <translation>Geschwindigkeit eff.</translation>
    </message>
    <message>
        <source>1x</source>
        <translation>1x</translation>
    </message>
    <message>
        <source>above 1 kHz</source>
        <translation>über 1 kHz</translation>
    </message>
    <message>
        <source>line at the cursor</source>
        <translation>Linie am Cursor</translation>
    </message>
    <message>
        <source>Close the comparison</source>
        <translation>Vergleich schließen</translation>
    </message>
    <message>
        <source>Close the comparison (Esc)</source>
        <translation>Vergleich schließen (Esc)</translation>
    </message>
    <message>
        <source>The same quantity elsewhere, largest first</source>
        <translation>Dieselbe Größe an anderer Stelle, größte zuerst</translation>
    </message>
    <message>
        <source>A row lays its spectrum over the one shown; Return goes there; Ctrl+C copies all</source>
        <translation>Eine Zeile legt ihr Spektrum über das gezeigte; Eingabe geht dorthin; Strg+C kopiert alles</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>× shown</source>
        <translation>× gezeigt</translation>
    </message>
    <message>
        <source>where</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>what</source>
        <translation>was</translation>
    </message>
    <message>
        <source>recorded</source>
        <translation>aufgezeichnet</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Largest: %1.</source>
        <translation>Am größten: %1.</translation>
    </message>
    <message>
        <source>below each other</source>
        <translation>untereinander</translation>
    </message>
    <message>
        <source>Spectra of all places below each other</source>
        <translation>Spektren aller Orte untereinander</translation>
    </message>
    <message>
        <source>The spectra of all places below each other on one axis (Y)</source>
        <translation>Die Spektren aller Orte untereinander auf einer Achse (Y)</translation>
    </message>
</context>
<context>
    <name>fettle::CursorStrip</name>
    <message>
        <source>Cursor</source>
        <translation>Cursor</translation>
    </message>
    <message>
        <source>Frequency of the carrier or of cursor A</source>
        <translation>Frequenz des Trägers oder des Cursors A</translation>
    </message>
    <message>
        <source>Frequency of cursor B</source>
        <translation>Frequenz des Cursors B</translation>
    </message>
    <message>
        <source>harmonics</source>
        <translation>Harmonische</translation>
    </message>
    <message>
        <source>Number of harmonics, with the carrier</source>
        <translation>Anzahl der Harmonischen, mit dem Träger</translation>
    </message>
    <message>
        <source>apart</source>
        <translation>Abstand</translation>
    </message>
    <message>
        <source>Spacing of the sidebands</source>
        <translation>Abstand der Seitenbänder</translation>
    </message>
    <message>
        <source>spacing of</source>
        <translation>Abstand von</translation>
    </message>
    <message>
        <source>Spacings of this machine</source>
        <translation>Abstände dieser Maschine</translation>
    </message>
    <message>
        <source>Spacings of this machine: shaft, cage, pole pass, mesh, twice the mains</source>
        <translation>Abstände dieser Maschine: Welle, Käfig, Polschlupf, Zahneingriff, doppeltes Netz</translation>
    </message>
    <message>
        <source>pairs</source>
        <translation>Paare</translation>
    </message>
    <message>
        <source>Pairs of sidebands</source>
        <translation>Seitenbandpaare</translation>
    </message>
    <message>
        <source>%1; the arrows move it by a tenth of a line, Page Up and Page Down by a line</source>
        <translation>%1; die Pfeiltasten verschieben um eine Zehntellinie, Bild auf und Bild ab um eine Linie</translation>
    </message>
    <message>
        <source>carrier</source>
        <translation>Träger</translation>
    </message>
    <message>
        <source>%1: %2 Hz</source>
        <translation>%1: %2 Hz</translation>
    </message>
    <message>
        <source>The shaft&apos;s speed is not known</source>
        <translation>Die Drehzahl der Welle ist nicht bekannt</translation>
    </message>
</context>
<context>
    <name>fettle::CursorTable</name>
    <message>
        <source>Lines of the cursor</source>
        <translation>Linien des Cursors</translation>
    </message>
    <message>
        <source>Lines of the cursor; Ctrl+C copies the chosen rows, or all</source>
        <translation>Linien des Cursors; Strg+C kopiert die gewählten Zeilen oder alle</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>order</source>
        <translation>Ordnung</translation>
    </message>
    <message>
        <source>dB over floor</source>
        <translation>dB ü. Rauschen</translation>
    </message>
</context>
<context>
    <name>fettle::DecisionDialog</name>
    <message>
        <source>Dispute: %1 machines</source>
        <translation>Bestreiten: %1 Maschinen</translation>
    </message>
    <message>
        <source>Defer: %1 machines</source>
        <translation>Verschieben: %1 Maschinen</translation>
    </message>
    <message>
        <source>Dispute: %1</source>
        <translation>Bestreiten: %1</translation>
    </message>
    <message>
        <source>Defer: %1</source>
        <translation>Verschieben: %1</translation>
    </message>
    <message>
        <source>Dispute</source>
        <translation>Bestreiten</translation>
    </message>
    <message>
        <source>Defer</source>
        <translation>Verschieben</translation>
    </message>
    <message>
        <source>The same answer is kept for each of: %1.</source>
        <translation>Dieselbe Antwort wird abgelegt für jede von: %1.</translation>
    </message>
    <message>
        <source>Look again on</source>
        <translation>Wieder ansehen am</translation>
    </message>
    <message>
        <source>What speaks against it</source>
        <translation>Was dagegen spricht</translation>
    </message>
    <message>
        <source>Why it can wait</source>
        <translation>Warum es warten kann</translation>
    </message>
    <message>
        <source>The day must be %1 or later.</source>
        <translation>Der Tag muss %1 oder später sein.</translation>
    </message>
    <message>
        <source>A reason is needed: it is kept with the round.</source>
        <translation>Ein Grund ist nötig: er wird mit der Runde abgelegt.</translation>
    </message>
</context>
<context>
    <name>fettle::RotorSketch</name>
    <message>
        <source>pick-up</source>
        <translation>Aufnehmer</translation>
    </message>
    <message>
        <source>turns</source>
        <translation>dreht</translation>
    </message>
</context>
<context>
    <name>fettle::EventDialog</name>
    <message>
        <source>Note or event: %1</source>
        <translation>Notiz oder Ereignis: %1</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Ablegen</translation>
    </message>
    <message>
        <source> g</source>
        <translation> g</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>keine Angabe</translation>
    </message>
    <message>
        <source>lithium complex, NLGI 2</source>
        <translation>Lithiumkomplex, NLGI 2</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Where (may be empty)</source>
        <translation>Wo (darf leer sein)</translation>
    </message>
    <message>
        <source>When, %1</source>
        <translation>Wann, %1</translation>
    </message>
    <message>
        <source>Grease, grams</source>
        <translation>Fett, Gramm</translation>
    </message>
    <message>
        <source>Grease, type</source>
        <translation>Fett, Sorte</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Correction: %1</source>
        <translation>Berichtigung: %1</translation>
    </message>
    <message>
        <source>A new note about &quot;%1&quot; of %2. What was said then stays and is shown with it.</source>
        <translation>Eine neue Notiz zu „%1“ (%2). Das damals Gesagte bleibt stehen und wird mit ihr gezeigt.</translation>
    </message>
    <message>
        <source>which part, its designation, clearance and seal</source>
        <translation>welches Teil, seine Bezeichnung, Lagerluft und Dichtung</translation>
    </message>
    <message>
        <source>what was done; alignment before and after: offset, angle, with their units</source>
        <translation>was getan wurde; Ausrichtung vorher und nachher: Versatz, Winkel, mit Einheiten</translation>
    </message>
    <message>
        <source>A note needs words.</source>
        <translation>Eine Notiz braucht Worte.</translation>
    </message>
</context>
<context>
    <name>fettle::EvidenceActions</name>
    <message>
        <source>Asking who stops when it goes …</source>
        <translation>Wird geprüft: wer steht, wenn sie verschwindet …</translation>
    </message>
    <message>
        <source>Making the rounds of the past again …</source>
        <translation>Vergangene Runden werden neu gebildet …</translation>
    </message>
</context>
<context>
    <name>fettle::EvidenceModel</name>
    <message>
        <source>absent</source>
        <translation>fehlt</translation>
    </message>
    <message>
        <source>left out</source>
        <translation>ausgelassen</translation>
    </message>
    <message>
        <source>What the search over views, shifts and variants costs or brings back; takes up the rounding of the rows above</source>
        <translation>Was die Suche über Sichten, Verschiebungen und Varianten kostet oder zurückbringt; enthält die Rundung der Zeilen darüber</translation>
    </message>
    <message>
        <source>From the strongest recording, whose lines are shown, to the mean e-value of all</source>
        <translation>Von der stärksten Aufzeichnung, deren Linien gezeigt sind, zum Mittel der e-Werte aller</translation>
    </message>
    <message>
        <source>The sum of the rows: how unlike chance, not the odds that the fault is there</source>
        <translation>Die Summe der Zeilen: wie wenig es nach Zufall aussieht, nicht die Wahrscheinlichkeit, dass der Fehler vorliegt</translation>
    </message>
    <message>
        <source>left out: %1</source>
        <translation>ausgelassen: %1</translation>
    </message>
    <message>
        <source>%1; expected %2 %6, top of the peak %3 %6; rank p %4; %5 of true faults show this line</source>
        <translation>%1; erwartet %2 %6, Gipfel der Spitze %3 %6; Rang p %4; %5 der wahren Fehler zeigen diese Linie</translation>
    </message>
    <message>
        <source>%1, %2, %3 decibans</source>
        <translation>%1, %2, %3 Deziban</translation>
    </message>
    <message>
        <source>%1, %2 decibans</source>
        <translation>%1, %2 Deziban</translation>
    </message>
    <message>
        <source>against</source>
        <translation>dagegen</translation>
    </message>
    <message>
        <source>for</source>
        <translation>dafür</translation>
    </message>
    <message>
        <source>neutral</source>
        <translation>neutral</translation>
    </message>
    <message>
        <source>line</source>
        <translation>Linie</translation>
    </message>
    <message>
        <source>order</source>
        <translation>Ordnung</translation>
    </message>
    <message>
        <source>expected %1</source>
        <translation>erwartet %1</translation>
    </message>
    <message>
        <source>found %1</source>
        <translation>gefunden %1</translation>
    </message>
    <message>
        <source>dB over</source>
        <translation>dB über</translation>
    </message>
    <message>
        <source>rank p</source>
        <translation>Rang p</translation>
    </message>
    <message>
        <source>w</source>
        <translation>w</translation>
    </message>
    <message>
        <source>decibans</source>
        <translation>Deziban</translation>
    </message>
    <message>
        <source>sum</source>
        <translation>Summe</translation>
    </message>
    <message>
        <source>Expected line; full triangle found, open one absent, cross left out</source>
        <translation>Erwartete Linie; volles Dreieck gefunden, offenes fehlt, Kreuz ausgelassen</translation>
    </message>
    <message>
        <source>Order of the bearing&apos;s own shaft</source>
        <translation>Ordnung der eigenen Welle des Lagers</translation>
    </message>
    <message>
        <source>Where the line was expected at the fitted slip, %1</source>
        <translation>Wo die Linie beim angepassten Schlupf erwartet wurde, %1</translation>
    </message>
    <message>
        <source>Top of the peak, %1; or absent, or left out</source>
        <translation>Gipfel der Spitze, %1; oder fehlt, oder ausgelassen</translation>
    </message>
    <message>
        <source>Power over the local floor, dB</source>
        <translation>Leistung über dem örtlichen Grundrauschen, dB</translation>
    </message>
    <message>
        <source>Share of the view&apos;s positions that are as high</source>
        <translation>Anteil der Stellen der Sicht, die ebenso hoch sind</translation>
    </message>
    <message>
        <source>Share of true faults that show this line</source>
        <translation>Anteil der wahren Fehler, die diese Linie zeigen</translation>
    </message>
    <message>
        <source>What the line added or took away, decibans</source>
        <translation>Was die Linie hinzufügte oder wegnahm, Deziban</translation>
    </message>
    <message>
        <source>Running sum down to the weight, decibans</source>
        <translation>Laufende Summe bis zum Gewicht, Deziban</translation>
    </message>
    <message>
        <source>Against to the left, for to the right of the zero line</source>
        <translation>Dagegen links, dafür rechts der Nulllinie</translation>
    </message>
</context>
<context>
    <name>fettle::EvidencePanel</name>
    <message>
        <source>Fault evidence</source>
        <translation>Belege zum Fehler</translation>
    </message>
    <message>
        <source>Since when would the rule have listed this machine?</source>
        <translation>Seit wann hätte die Regel diese Maschine aufgeführt?</translation>
    </message>
    <message>
        <source>Best chance fit: what each line added</source>
        <translation>Bester Zufallstreffer: was jede Linie beitrug</translation>
    </message>
    <message>
        <source>What each line added</source>
        <translation>Was jede Linie beitrug</translation>
    </message>
    <message>
        <source>No further recording is suggested for this fault</source>
        <translation>Für diesen Fehler wird keine weitere Aufzeichnung vorgeschlagen</translation>
    </message>
    <message>
        <source>Recordings that would settle it</source>
        <translation>Aufzeichnungen, die es klären würden</translation>
    </message>
    <message>
        <source>%1 of %2, %3 (%4, %5)</source>
        <translation>%1 von %2, %3 (%4, %5)</translation>
    </message>
    <message>
        <source>%1 more</source>
        <translation>%1 weitere</translation>
    </message>
    <message>
        <source>%1 %2: no family has a line here.</source>
        <translation>%1 %2: keine Familie hat hier eine Linie.</translation>
    </message>
    <message>
        <source>%1 %2 is claimed by %3.</source>
        <translation>%1 %2 wird beansprucht von %3.</translation>
    </message>
    <message>
        <source>; </source>
        <translation>; </translation>
    </message>
    <message>
        <source>Show the week</source>
        <translation>Woche zeigen</translation>
    </message>
    <message>
        <source>Back from the chosen recording to all of the week</source>
        <translation>Zurück von der gewählten Aufzeichnung zur ganzen Woche</translation>
    </message>
    <message>
        <source>Running sum</source>
        <translation>Laufende Summe</translation>
    </message>
    <message>
        <source>A column that adds up line by line, decibans</source>
        <translation>Eine Spalte, die Linie für Linie summiert, Deziban</translation>
    </message>
    <message>
        <source>Copy table</source>
        <translation>Tabelle kopieren</translation>
    </message>
    <message>
        <source>All columns of the table, for a spreadsheet</source>
        <translation>Alle Spalten der Tabelle, für eine Tabellenrechnung</translation>
    </message>
    <message>
        <source>Whose line is it?</source>
        <translation>Wessen Linie?</translation>
    </message>
    <message>
        <source>Which machine&apos;s stops the line under the cursor leaves with</source>
        <translation>Mit dem Stillstand welcher Maschine die Linie unter dem Cursor verschwindet</translation>
    </message>
    <message>
        <source>Against</source>
        <translation>Gegenbelege</translation>
    </message>
    <message>
        <source>Rivals for the same lines</source>
        <translation>Rivalen um dieselben Linien</translation>
    </message>
    <message>
        <source>What would change this verdict</source>
        <translation>Was dieses Urteil ändern würde</translation>
    </message>
    <message>
        <source>All asked for…</source>
        <translation>Alle angeforderten…</translation>
    </message>
    <message>
        <source>What is asked for of the nodes and on the walk, of the whole fleet</source>
        <translation>Was von den Knoten und auf dem Rundgang angefordert ist, für die ganze Flotte</translation>
    </message>
    <message>
        <source>Weight over the weeks, decibans a recording</source>
        <translation>Gewicht über die Wochen, Deziban je Aufzeichnung</translation>
    </message>
    <message>
        <source>Left out</source>
        <translation>Ausgelassen</translation>
    </message>
    <message>
        <source>Blind spots</source>
        <translation>Blinde Flecken</translation>
    </message>
    <message>
        <source>What its history says</source>
        <translation>Was die Historie sagt</translation>
    </message>
    <message>
        <source>First listed…</source>
        <translation>Erstmals aufgeführt…</translation>
    </message>
    <message>
        <source>The first day on which the rule would have listed the machine, asked of the kept weeks back from its last repair, or from now; takes a while</source>
        <translation>Der erste Tag, an dem die Regel die Maschine aufgeführt hätte, ermittelt aus den abgelegten Wochen rückwärts ab der letzten Reparatur oder ab jetzt; dauert eine Weile</translation>
    </message>
    <message>
        <source>About the recordings</source>
        <translation>Zu den Aufzeichnungen</translation>
    </message>
    <message>
        <source>By change against the machine&apos;s own baseline, outside the list&apos;s share of chance entries; no line was weighed for it.</source>
        <translation>Durch Änderung gegen die eigene Ausgangslage der Maschine, außerhalb des Zufallsanteils der Liste; dafür wurde keine Linie gewogen.</translation>
    </message>
</context>
<context>
    <name>fettle::EvidenceView</name>
    <message>
        <source>Lines and what each added or took away</source>
        <translation>Linien und was jede hinzufügte oder wegnahm</translation>
    </message>
</context>
<context>
    <name>fettle::FaultList</name>
    <message>
        <source>Faults considered, by weight</source>
        <translation>Betrachtete Fehler, nach Gewicht</translation>
    </message>
    <message>
        <source>fault</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>decibans</source>
        <translation>Deziban</translation>
    </message>
    <message>
        <source>How unlike chance its lines are: 10 log10 of the e-value, decibans</source>
        <translation>Wie wenig seine Linien nach Zufall aussehen: 10 log10 des e-Werts, Deziban</translation>
    </message>
    <message>
        <source>Against to the left, for to the right of the zero line; dashed: a finding</source>
        <translation>Dagegen links, dafür rechts der Nulllinie; gestrichelt: ein Befund</translation>
    </message>
    <message>
        <source>no finding; considered were</source>
        <translation>kein Befund; betrachtet wurden</translation>
    </message>
    <message>
        <source>considered and not found: %1</source>
        <translation>betrachtet und nicht gefunden: %1</translation>
    </message>
    <message>
        <source>%1 (show)</source>
        <translation>%1 (zeigen)</translation>
    </message>
    <message>
        <source>%1 (hide)</source>
        <translation>%1 (verbergen)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>stage %1</source>
        <translation>Stadium %1</translation>
    </message>
    <message>
        <source>zone %1</source>
        <translation>Zone %1</translation>
    </message>
    <message>
        <source>since %1</source>
        <translation>seit %1</translation>
    </message>
    <message>
        <source>in %1 % of recordings</source>
        <translation>in %1 % der Aufzeichnungen</translation>
    </message>
    <message>
        <source>%1 decibans</source>
        <translation>%1 Deziban</translation>
    </message>
    <message>
        <source>not weighed: %1</source>
        <translation>nicht gewogen: %1</translation>
    </message>
    <message>
        <source>%1; %2</source>
        <translation>%1; %2</translation>
    </message>
    <message>
        <source>%1; %2; %3</source>
        <translation>%1; %2; %3</translation>
    </message>
    <message>
        <source>by change</source>
        <translation>durch Änderung</translation>
    </message>
</context>
<context>
    <name>fettle::Gestures</name>
    <message>
        <source>Wheel, + and -</source>
        <translation>Rad, + und -</translation>
    </message>
    <message>
        <source>zoom</source>
        <translation>Maßstab ändern</translation>
    </message>
    <message>
        <source>zoom the upright axis</source>
        <translation>Maßstab der senkrechten Achse</translation>
    </message>
    <message>
        <source>Drag, Page Up, Page Down</source>
        <translation>Ziehen, Bild auf, Bild ab</translation>
    </message>
    <message>
        <source>shift</source>
        <translation>verschieben</translation>
    </message>
    <message>
        <source>Shift and drag</source>
        <translation>Umschalt und Ziehen</translation>
    </message>
    <message>
        <source>zoom to a frame</source>
        <translation>auf einen Rahmen vergrößern</translation>
    </message>
    <message>
        <source>Double click, Home</source>
        <translation>Doppelklick, Pos1</translation>
    </message>
    <message>
        <source>show all</source>
        <translation>alles zeigen</translation>
    </message>
    <message>
        <source>Click</source>
        <translation>Klick</translation>
    </message>
    <message>
        <source>choose the moment or peak</source>
        <translation>Zeitpunkt oder Spitze wählen</translation>
    </message>
    <message>
        <source>Left, Right</source>
        <translation>Links, Rechts</translation>
    </message>
    <message>
        <source>step to the next; with Shift: farther</source>
        <translation>weiter zum nächsten; mit Umschalt: weiter weg</translation>
    </message>
    <message>
        <source>Alt and Left, Right</source>
        <translation>Alt und Links, Rechts</translation>
    </message>
    <message>
        <source>in a spectrum: the cursor by a tenth of a line</source>
        <translation>im Spektrum: Cursor um eine Zehntellinie</translation>
    </message>
    <message>
        <source>Ctrl and Left, Right</source>
        <translation>Strg und Links, Rechts</translation>
    </message>
    <message>
        <source>in a spectrum: the other cursor, the sidebands&apos; spacing, the number of harmonics</source>
        <translation>im Spektrum: anderer Cursor, Seitenbandabstand, Anzahl der Harmonischen</translation>
    </message>
    <message>
        <source>Ctrl and wheel, Alt with + and -</source>
        <translation>Strg und Mausrad, Alt mit + und -</translation>
    </message>
    <message>
        <source>Ctrl with + and -</source>
        <translation>Strg mit + und -</translation>
    </message>
    <message>
        <source>not of the plot: letters of the whole window larger, smaller</source>
        <translation>nicht am Bild: Schrift des ganzen Fensters größer, kleiner</translation>
    </message>
</context>
<context>
    <name>fettle::GuideDialog</name>
    <message>
        <source>Help</source>
        <translation>Hilfe</translation>
    </message>
    <message>
        <source>Topics</source>
        <translation>Themen</translation>
    </message>
    <message>
        <source>Text of the topic</source>
        <translation>Text des Themas</translation>
    </message>
</context>
<context>
    <name>fettle::HistoryList</name>
    <message>
        <source>History of the machine</source>
        <translation>Historie der Maschine</translation>
    </message>
    <message>
        <source>Which events are listed</source>
        <translation>Welche Ereignisse aufgeführt sind</translation>
    </message>
    <message>
        <source>all events</source>
        <translation>alle Ereignisse</translation>
    </message>
    <message>
        <source>Events of the machine, newest first</source>
        <translation>Ereignisse der Maschine, neueste zuerst</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>&amp;Add…</source>
        <translation>&amp;Hinzufügen…</translation>
    </message>
    <message>
        <source>A note, greasing, repair or another event of this machine</source>
        <translation>Eine Notiz, Schmierung, Reparatur oder ein anderes Ereignis dieser Maschine</translation>
    </message>
    <message>
        <source>C&amp;orrect…</source>
        <translation>&amp;Berichtigen…</translation>
    </message>
    <message>
        <source>A new note about the chosen event; nothing is rewritten</source>
        <translation>Eine neue Notiz zum gewählten Ereignis; nichts wird umgeschrieben</translation>
    </message>
    <message>
        <source>&amp;Before and after…</source>
        <translation>&amp;Vorher und nachher…</translation>
    </message>
    <message>
        <source>The machine before and after the chosen event</source>
        <translation>Die Maschine vor und nach dem gewählten Ereignis</translation>
    </message>
    <message>
        <source>&amp;Import events…</source>
        <translation>&amp;Ereignisse einlesen…</translation>
    </message>
    <message>
        <source>Events of this site from a CSV or JSON table</source>
        <translation>Ereignisse dieses Standorts aus einer CSV- oder JSON-Tabelle</translation>
    </message>
    <message>
        <source>No machine is chosen. Open one from the round or the register.</source>
        <translation>Keine Maschine gewählt. Eine aus der Runde oder den Stammdaten öffnen.</translation>
    </message>
    <message>
        <source>Nothing is noted of this machine yet. Greasings, repairs and remarks stand here and in the plots; add one, or import the site&apos;s list.</source>
        <translation>Zu dieser Maschine ist noch nichts notiert. Schmierungen, Reparaturen und Bemerkungen stehen hier und in den Diagrammen; eine hinzufügen oder die Liste des Standorts einlesen.</translation>
    </message>
    <message>
        <source>No event of this kind. Choose another kind, or all events.</source>
        <translation>Kein Ereignis dieser Art. Eine andere Art oder alle Ereignisse wählen.</translation>
    </message>
    <message>
        <source>%1 [%2]</source>
        <translation>%1 [%2]</translation>
    </message>
    <message>
        <source>1 photograph</source>
        <translation>1 Foto</translation>
    </message>
    <message>
        <source>%1 photographs</source>
        <translation>%1 Fotos</translation>
    </message>
    <message>
        <source>heard</source>
        <translation>gehört</translation>
    </message>
    <message>
        <source>corrected</source>
        <translation>berichtigt</translation>
    </message>
</context>
<context>
    <name>fettle::ImportDialog</name>
    <message>
        <source>with subfolders</source>
        <translation>mit Unterordnern</translation>
    </message>
    <message>
        <source>show first what they are taken for</source>
        <translation>zuerst zeigen, wofür sie gehalten werden</translation>
    </message>
    <message>
        <source>&amp;Files…</source>
        <translation>&amp;Dateien…</translation>
    </message>
    <message>
        <source>F&amp;older…</source>
        <translation>&amp;Ordner…</translation>
    </message>
    <message>
        <source>&amp;Stop</source>
        <translation>&amp;Anhalten</translation>
    </message>
    <message>
        <source>&amp;Try again</source>
        <translation>&amp;Nochmals</translation>
    </message>
    <message>
        <source>&amp;What were they taken for…</source>
        <translation>&amp;Wofür gehalten…</translation>
    </message>
    <message>
        <source>Import recordings</source>
        <translation>Aufzeichnungen einlesen</translation>
    </message>
    <message>
        <source>Stopping; what is taken stays.</source>
        <translation>Wird angehalten; Übernommenes bleibt.</translation>
    </message>
    <message>
        <source>Files chosen here are shown with where each fact came from; what is missing can be typed once and kept as a rule.</source>
        <translation>Hier gewählte Dateien werden gezeigt mit der Herkunft jeder Angabe; Fehlendes lässt sich einmal eintippen und als Regel ablegen.</translation>
    </message>
    <message>
        <source>The refused files, once they or their sidecars are mended.</source>
        <translation>Die abgewiesenen Dateien, sobald sie oder ihre Begleitdateien berichtigt sind.</translation>
    </message>
    <message>
        <source>Shows the refused files; what is missing can be typed and kept as a rule.</source>
        <translation>Zeigt die abgewiesenen Dateien; Fehlendes lässt sich eintippen und als Regel ablegen.</translation>
    </message>
    <message>
        <source>Choose files or a folder, or drop them here: WAV, FLAC, CSV, UFF, MAT or HDF5, each with its JSON file beside it, or tables of levels. What is already in the fleet file is passed over.</source>
        <translation>Dateien oder einen Ordner wählen oder hier ablegen: WAV, FLAC, CSV, UFF, MAT oder HDF5, jede mit ihrer JSON-Datei daneben, oder Tabellen von Pegeln. Was schon in der Flottendatei steht, wird übergangen.</translation>
    </message>
    <message>
        <source>Refused files</source>
        <translation>Abgewiesene Dateien</translation>
    </message>
    <message>
        <source>Recordings to import</source>
        <translation>Einzulesende Aufzeichnungen</translation>
    </message>
    <message>
        <source>Recordings (*.wav *.flac *.csv *.uff *.unv *.mat *.h5 *.hdf5)</source>
        <translation>Aufzeichnungen (*.wav *.flac *.csv *.uff *.unv *.mat *.h5 *.hdf5)</translation>
    </message>
    <message>
        <source>All files (*)</source>
        <translation>Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Folder to import</source>
        <translation>Einzulesender Ordner</translation>
    </message>
    <message>
        <source>The recordings are being found.</source>
        <translation>Die Aufzeichnungen werden gesucht.</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>%1 of %2: %3</source>
        <translation>%1 von %2: %3</translation>
    </message>
    <message>
        <source>Stopped; what was taken stays. The same import goes on from there.</source>
        <translation>Angehalten; Übernommenes bleibt. Dasselbe Einlesen geht von dort weiter.</translation>
    </message>
    <message>
        <source>Done.</source>
        <translation>Fertig.</translation>
    </message>
    <message>
        <source>%1 found · %2 taken · %3 already there · %4 for weeks already closed · %5 refused or parked</source>
        <translation>%1 gefunden · %2 übernommen · %3 schon vorhanden · %4 für schon abgeschlossene Wochen · %5 abgewiesen oder zurückgestellt</translation>
    </message>
    <message>
        <source>Refused or parked; the list is kept under Round, Refused files</source>
        <translation>Abgewiesen oder zurückgestellt; die Liste steht unter Runde, Abgewiesene Dateien</translation>
    </message>
</context>
<context>
    <name>fettle::JobDraftDialog</name>
    <message>
        <source>New job: %1</source>
        <translation>Neuer Auftrag: %1</translation>
    </message>
    <message>
        <source>Draft the job</source>
        <translation>Auftrag entwerfen</translation>
    </message>
    <message>
        <source>Findings of the week to %1. One job takes all that one stop can mend; its dates are the soonest of them.</source>
        <translation>Befunde der Woche bis %1. Ein Auftrag umfasst alles, was ein Stillstand beheben kann; seine Termine sind die frühesten davon.</translation>
    </message>
    <message>
        <source>For these findings</source>
        <translation>Für diese Befunde</translation>
    </message>
    <message>
        <source>Order parts by</source>
        <translation>Teile bestellen bis</translation>
    </message>
    <message>
        <source>Do not run beyond</source>
        <translation>Nicht weiterfahren über</translation>
    </message>
    <message>
        <source>Planned stop</source>
        <translation>Geplanter Stillstand</translation>
    </message>
    <message>
        <source>Work order</source>
        <translation>Arbeitsauftrag-Nr.</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <source>Nothing was found in this week: there is no job to draft.</source>
        <translation>In dieser Woche wurde nichts gefunden: kein Auftrag zu entwerfen.</translation>
    </message>
    <message>
        <source>Choose at least one finding.</source>
        <translation>Mindestens einen Befund wählen.</translation>
    </message>
</context>
<context>
    <name>fettle::JobModel</name>
    <message>
        <source>%1, R%2</source>
        <translation>%1, R%2</translation>
    </message>
    <message>
        <source>replaced by job %1</source>
        <translation>ersetzt durch Auftrag %1</translation>
    </message>
    <message>
        <source>%1, overdue</source>
        <translation>%1, überfällig</translation>
    </message>
    <message>
        <source>%1, %2 of 4</source>
        <translation>%1, %2 von 4</translation>
    </message>
    <message>
        <source>Job</source>
        <translation>Auftrag</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>For</source>
        <translation>Für</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>By when</source>
        <translation>Bis wann</translation>
    </message>
    <message>
        <source>Priority</source>
        <translation>Priorität</translation>
    </message>
    <message>
        <source>Work order</source>
        <translation>Arbeitsauftrag-Nr.</translation>
    </message>
</context>
<context>
    <name>fettle::JobMoveDialog</name>
    <message>
        <source>Job %1: what happened</source>
        <translation>Auftrag %1: was geschah</translation>
    </message>
    <message>
        <source>Revision of job %1</source>
        <translation>Revision des Auftrags %1</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Ablegen</translation>
    </message>
    <message>
        <source>Make the revision</source>
        <translation>Revision anlegen</translation>
    </message>
    <message>
        <source>Revision %1 replaces revision %2: the old job stays as it is and is marked as replaced, the new one is drafted again.</source>
        <translation>Revision %1 ersetzt Revision %2: der alte Auftrag bleibt, wie er ist, und wird als ersetzt gekennzeichnet, der neue wird neu entworfen.</translation>
    </message>
    <message>
        <source>Order parts by</source>
        <translation>Teile bestellen bis</translation>
    </message>
    <message>
        <source>Do not run beyond</source>
        <translation>Nicht weiterfahren über</translation>
    </message>
    <message>
        <source>Planned stop</source>
        <translation>Geplanter Stillstand</translation>
    </message>
    <message>
        <source>Work order</source>
        <translation>Arbeitsauftrag-Nr.</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <source>Why it is revised</source>
        <translation>Grund der Revision</translation>
    </message>
    <message>
        <source>stays %1</source>
        <translation>bleibt %1</translation>
    </message>
    <message>
        <source>It is now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Done on</source>
        <translation>Erledigt am</translation>
    </message>
    <message>
        <source>Kind of work</source>
        <translation>Art der Arbeit</translation>
    </message>
    <message>
        <source>Say what the revision changes.</source>
        <translation>Angeben, was die Revision ändert.</translation>
    </message>
    <message>
        <source>Say what was done: the work starts the verification and stands in the machine&apos;s history.</source>
        <translation>Angeben, was getan wurde: die Arbeit beginnt den Nachweis und steht in der Historie der Maschine.</translation>
    </message>
</context>
<context>
    <name>fettle::JobsDialog</name>
    <message>
        <source>Jobs</source>
        <translation>Aufträge</translation>
    </message>
    <message>
        <source>Jobs, overdue first</source>
        <translation>Aufträge, überfällige zuerst</translation>
    </message>
    <message>
        <source>The chosen job</source>
        <translation>Der gewählte Auftrag</translation>
    </message>
    <message>
        <source>Which jobs are listed</source>
        <translation>Welche Aufträge aufgeführt sind</translation>
    </message>
    <message>
        <source>open or to be verified</source>
        <translation>offen oder nachzuweisen</translation>
    </message>
    <message>
        <source>overdue</source>
        <translation>überfällig</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>one machine only</source>
        <translation>nur eine Maschine</translation>
    </message>
    <message>
        <source>%1 only</source>
        <translation>nur %1</translation>
    </message>
    <message>
        <source>&amp;New job…</source>
        <translation>&amp;Neuer Auftrag…</translation>
    </message>
    <message>
        <source>A job for findings of this week</source>
        <translation>Ein Auftrag für Befunde dieser Woche</translation>
    </message>
    <message>
        <source>&amp;Move on…</source>
        <translation>&amp;Weiterführen…</translation>
    </message>
    <message>
        <source>What happened to the chosen job next</source>
        <translation>Was mit dem gewählten Auftrag als Nächstes geschah</translation>
    </message>
    <message>
        <source>&amp;Revise…</source>
        <translation>&amp;Revidieren…</translation>
    </message>
    <message>
        <source>A new job that replaces the chosen one</source>
        <translation>Ein neuer Auftrag, der den gewählten ersetzt</translation>
    </message>
    <message>
        <source>&amp;Planner&apos;s report…</source>
        <translation>Rückmeldung &amp;Planer…</translation>
    </message>
    <message>
        <source>What was found when it was opened</source>
        <translation>Was beim Öffnen gefunden wurde</translation>
    </message>
    <message>
        <source>&amp;Before and after…</source>
        <translation>&amp;Vorher und nachher…</translation>
    </message>
    <message>
        <source>The machine before and after the work</source>
        <translation>Die Maschine vor und nach der Arbeit</translation>
    </message>
    <message>
        <source>Findings &amp;sheet…</source>
        <translation>&amp;Befundblatt…</translation>
    </message>
    <message>
        <source>The sheet of the chosen job&apos;s machine</source>
        <translation>Das Befundblatt der Maschine des gewählten Auftrags</translation>
    </message>
    <message>
        <source>%1 jobs, %2 overdue</source>
        <translation>%1 Aufträge, %2 überfällig</translation>
    </message>
    <message>
        <source>%1 jobs</source>
        <translation>%1 Aufträge</translation>
    </message>
    <message>
        <source>No job yet. Choose a machine with a finding and make a new job from it.</source>
        <translation>Noch kein Auftrag. Eine Maschine mit Befund wählen und daraus einen neuen Auftrag anlegen.</translation>
    </message>
    <message>
        <source>No job of this kind. Choose another kind, or all.</source>
        <translation>Kein Auftrag dieser Art. Eine andere Art oder alle wählen.</translation>
    </message>
    <message>
        <source>Job %1 of %2 is %3.</source>
        <translation>Auftrag %1 (%2) ist %3.</translation>
    </message>
    <message>
        <source>The same report of that day is there already; it stands once.</source>
        <translation>Dieselbe Rückmeldung dieses Tages ist schon vorhanden; sie steht nur einmal.</translation>
    </message>
    <message>
        <source>The report is kept and counts in this site&apos;s record.</source>
        <translation>Die Rückmeldung ist abgelegt und zählt in der Bilanz dieses Standorts.</translation>
    </message>
</context>
<context>
    <name>fettle::JsonTableModel</name>
    <message>
        <source>line %1%2: %3</source>
        <translation>Zeile %1%2: %3</translation>
    </message>
</context>
<context>
    <name>fettle::LanesPlot</name>
    <message>
        <source>Spectra below each other</source>
        <translation>Spektren untereinander</translation>
    </message>
    <message>
        <source>orders</source>
        <translation>Ordnungen</translation>
    </message>
    <message>
        <source>Orders of each machine&apos;s own shaft across</source>
        <translation>Quer Ordnungen der jeweils eigenen Welle</translation>
    </message>
    <message>
        <source>own scales</source>
        <translation>eigene Skalen</translation>
    </message>
    <message>
        <source>Each lane up to its own highest line</source>
        <translation>Jede Spur bis zu ihrer eigenen höchsten Linie</translation>
    </message>
    <message>
        <source>%1: highest %2 at %3</source>
        <translation>%1: am höchsten %2 bei %3</translation>
    </message>
    <message>
        <source>orders of each machine&apos;s own shaft</source>
        <translation>Ordnungen der jeweils eigenen Welle</translation>
    </message>
    <message>
        <source>%1: %2, %3</source>
        <translation>%1: %2, %3</translation>
    </message>
    <message>
        <source>all data</source>
        <translation>alle Daten</translation>
    </message>
    <message>
        <source>as shown</source>
        <translation>wie gezeigt</translation>
    </message>
</context>
<context>
    <name>fettle::LedgerModel</name>
    <message>
        <source>
on evidence</source>
        <translation>
nach Belegen</translation>
    </message>
    <message>
        <source>
by change</source>
        <translation>
nach Änderung</translation>
    </message>
    <message>
        <source>
by zone</source>
        <translation>
nach Zone</translation>
    </message>
    <message>
        <source>
by hand</source>
        <translation>
von Hand</translation>
    </message>
    <message>
        <source>reason given</source>
        <translation>Grund angegeben</translation>
    </message>
    <message>
        <source>reason to be given</source>
        <translation>Grund anzugeben</translation>
    </message>
    <message>
        <source>undecided</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>sample, opened</source>
        <translation>Stichprobe, geöffnet</translation>
    </message>
    <message>
        <source>sample, to be opened</source>
        <translation>Stichprobe, zu öffnen</translation>
    </message>
    <message>
        <source>left, with the block</source>
        <translation>belassen, mit dem Block</translation>
    </message>
    <message>
        <source>%1, and %2 more</source>
        <translation>%1 und %2 weitere</translation>
    </message>
    <message>
        <source>criticality %1</source>
        <translation>Kritikalität %1</translation>
    </message>
    <message>
        <source>no area</source>
        <translation>kein Bereich</translation>
    </message>
    <message>
        <source>%1, %2 settled</source>
        <translation>%1, %2 entschieden</translation>
    </message>
    <message>
        <source>%1, accepted as a block</source>
        <translation>%1, als Block angenommen</translation>
    </message>
    <message>
        <source>%1; of the %2 drawn at random as a sample, %3 opened</source>
        <translation>%1; von den %2 zufällig gezogenen der Stichprobe %3 geöffnet</translation>
    </message>
    <message>
        <source>never</source>
        <translation>nie</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1, weekly medians of 26 weeks; limit %2 %3</source>
        <translation>%1, Wochenmediane über 26 Wochen; Grenze %2 %3</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>%1
%2</source>
        <translation>%1
%2</translation>
    </message>
    <message>
        <source>listed by: %1</source>
        <translation>aufgeführt durch: %1</translation>
    </message>
    <message>
        <source>nothing was ever recorded</source>
        <translation>es wurde nie etwas aufgezeichnet</translation>
    </message>
    <message>
        <source>newest recording of the machine: %1,
%2 before the end of the period, %3</source>
        <translation>neueste Aufzeichnung der Maschine: %1,
%2 vor Ende des Zeitraums, %3</translation>
    </message>
    <message>
        <source>nothing was weighed</source>
        <translation>nichts wurde gewogen</translation>
    </message>
    <message>
        <source>the machine&apos;s week: %1 decibans</source>
        <translation>die Woche der Maschine: %1 Deziban</translation>
    </message>
    <message>
        <source>a mean of e-values: over the recordings of the week, over the fault families of each
bearing, over the bearings. So nothing is gained by looking for more.</source>
        <translation>ein Mittel von e-Werten: über die Aufzeichnungen der Woche, über die Fehlerfamilien jedes
Lagers, über die Lager. Mehr zu suchen bringt also keinen Gewinn.</translation>
    </message>
    <message>
        <source>by itself %1: %2</source>
        <translation>für sich %1: %2</translation>
    </message>
    <message>
        <source>with its criticality (%1, %2%3) against %4 for the list</source>
        <translation>mit ihrer Kritikalität (%1, %2%3) gegen %4 für die Liste</translation>
    </message>
    <message>
        <source>Weight %1 of the machine, %2 of the finding by itself: the machine&apos;s is a mean over its bearings and all that was looked for there.</source>
        <translation>Gewicht %1 der Maschine, %2 des Befunds für sich: das der Maschine ist ein Mittel über ihre Lager und alles, wonach dort gesucht wurde.</translation>
    </message>
    <message>
        <source>%1 %2 %3%4</source>
        <translation>%1 %2 %3%4</translation>
    </message>
    <message>
        <source> of %1</source>
        <translation> von %1</translation>
    </message>
    <message>
        <source>newest recording %1 before the end of the period</source>
        <translation>neueste Aufzeichnung %1 vor Ende des Zeitraums</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Urgency</source>
        <translation>Dringlichk.</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Finding, and what changed</source>
        <translation>Befund und Änderung</translation>
    </message>
    <message>
        <source>26 weeks, limit</source>
        <translation>26 Wo., Grenze</translation>
    </message>
    <message>
        <source>Weight, dban</source>
        <translation>Gewicht, dban</translation>
    </message>
    <message>
        <source>Newest</source>
        <translation>Neueste</translation>
    </message>
    <message>
        <source>Decision</source>
        <translation>Entscheidung</translation>
    </message>
    <message>
        <source>leave, watch, plan or act; unseen where the machine could not be judged</source>
        <translation>belassen, beobachten, einplanen oder handeln; ungesehen, wo die Maschine nicht beurteilt werden konnte</translation>
    </message>
    <message>
        <source>tag, service and area</source>
        <translation>Kennzeichen, Aufgabe und Bereich</translation>
    </message>
    <message>
        <source>the strongest finding, and in one sentence what changed since the last round</source>
        <translation>der stärkste Befund und in einem Satz, was sich seit der letzten Runde geändert hat</translation>
    </message>
    <message>
        <source>weekly medians of the governing quantity with its next limit</source>
        <translation>Wochenmediane der maßgebenden Größe mit ihrer nächsten Grenze</translation>
    </message>
    <message>
        <source>decibans of the machine&apos;s week: how unlike chance, not the odds that the fault is there; a mean over its bearings and what was looked for there, so less than its strongest finding by itself</source>
        <translation>Deziban der Woche der Maschine: wie wenig es nach Zufall aussieht, nicht die Wahrscheinlichkeit, dass der Fehler vorliegt; ein Mittel über ihre Lager und das dort Gesuchte, daher weniger als ihr stärkster Befund für sich</translation>
    </message>
    <message>
        <source>age of the machine&apos;s newest recording at the end of the period, which is midnight at the site</source>
        <translation>Alter der neuesten Aufzeichnung der Maschine am Ende des Zeitraums, also um Mitternacht am Standort</translation>
    </message>
    <message>
        <source>accept, dispute with a reason, defer to a date</source>
        <translation>annehmen, mit Grund bestreiten, auf ein Datum verschieben</translation>
    </message>
</context>
<context>
    <name>fettle::LogActions</name>
    <message>
        <source>This fleet file is open for reading only.</source>
        <translation>Diese Flottendatei ist nur zum Lesen geöffnet.</translation>
    </message>
    <message>
        <source>Choose a machine first: an event belongs to one.</source>
        <translation>Erst eine Maschine wählen: ein Ereignis gehört zu einer Maschine.</translation>
    </message>
    <message>
        <source>Kept.</source>
        <translation>Abgelegt.</translation>
    </message>
    <message>
        <source>Choose a machine first: a baseline belongs to one.</source>
        <translation>Erst eine Maschine wählen: ein Ausgangsband gehört zu einer Maschine.</translation>
    </message>
    <message>
        <source>A new baseline of %1 begins.</source>
        <translation>Ein neues Ausgangsband von %1 beginnt.</translation>
    </message>
    <message>
        <source>Choose a machine first: a history belongs to one.</source>
        <translation>Erst eine Maschine wählen: eine Historie gehört zu einer Maschine.</translation>
    </message>
    <message>
        <source>History: %1</source>
        <translation>Historie: %1</translation>
    </message>
    <message>
        <source>Choose a machine first: before and after are of one.</source>
        <translation>Erst eine Maschine wählen: Vorher und nachher gelten für eine Maschine.</translation>
    </message>
    <message>
        <source>Events from a table: machine, time, kind, at, text, by</source>
        <translation>Ereignisse aus einer Tabelle: machine, time, kind, at, text, by</translation>
    </message>
    <message>
        <source>Tables (*.csv *.json);;All files (*)</source>
        <translation>Tabellen (*.csv *.json);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>%1 events are in the history.</source>
        <translation>%1 Ereignisse stehen in der Historie.</translation>
    </message>
    <message>
        <source>Events from a table</source>
        <translation>Ereignisse aus einer Tabelle</translation>
    </message>
    <message>
        <source>%1 Refused: %2.</source>
        <translation>%1 Abgewiesen: %2.</translation>
    </message>
</context>
<context>
    <name>fettle::MachineHistory</name>
    <message>
        <source>against speed</source>
        <translation>gegen Drehzahl</translation>
    </message>
    <message>
        <source>against load</source>
        <translation>gegen Last</translation>
    </message>
    <message>
        <source>against frame</source>
        <translation>gegen Gehäuse</translation>
    </message>
    <message>
        <source>against ambient</source>
        <translation>gegen Umgebung</translation>
    </message>
    <message>
        <source>Kind of spectra in the waterfall</source>
        <translation>Art der Spektren im Wasserfall</translation>
    </message>
    <message>
        <source>Waterfall in colours or as traces (W)</source>
        <translation>Wasserfall in Farben oder als Kurven (W)</translation>
    </message>
    <message>
        <source>colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>traces</source>
        <translation>Kurven</translation>
    </message>
    <message>
        <source>Frequencies or orders of the shaft</source>
        <translation>Frequenzen oder Ordnungen der Welle</translation>
    </message>
    <message>
        <source>frequency</source>
        <translation>Frequenz</translation>
    </message>
    <message>
        <source>orders</source>
        <translation>Ordnungen</translation>
    </message>
    <message>
        <source>What the quantity is drawn against</source>
        <translation>Wogegen die Größe aufgetragen wird</translation>
    </message>
    <message>
        <source>over time</source>
        <translation>über der Zeit</translation>
    </message>
    <message>
        <source>Control chart of the first quantity&apos;s daily medians</source>
        <translation>Regelkarte der Tagesmediane der ersten Größe</translation>
    </message>
    <message>
        <source>no chart</source>
        <translation>keine Karte</translation>
    </message>
    <message>
        <source>EWMA</source>
        <translation>EWMA</translation>
    </message>
    <message>
        <source>CUSUM</source>
        <translation>CUSUM</translation>
    </message>
    <message>
        <source>Span of time shown (keys 1 to 5)</source>
        <translation>Gezeigte Zeitspanne (Tasten 1 bis 5)</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
    <message>
        <source>6 months</source>
        <translation>6 Monate</translation>
    </message>
    <message>
        <source>month</source>
        <translation>Monat</translation>
    </message>
    <message>
        <source>week</source>
        <translation>Woche</translation>
    </message>
    <message>
        <source>day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>part</source>
        <translation>Teil</translation>
    </message>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>velocity</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>acceleration</source>
        <translation>Beschleunigung</translation>
    </message>
    <message>
        <source>envelope</source>
        <translation>Hüllkurve</translation>
    </message>
    <message>
        <source>%1 keeps no spectra for the waterfall: choose a channel of acceleration.</source>
        <translation>%1 führt keine Spektren für den Wasserfall: einen Beschleunigungskanal wählen.</translation>
    </message>
    <message>
        <source>No spectra of this kind are kept for %1. Choose another kind or channel.</source>
        <translation>Für %1 sind keine Spektren dieser Art abgelegt. Andere Art oder anderen Kanal wählen.</translation>
    </message>
    <message>
        <source>%1 was not measured on %2. Choose another quantity or channel.</source>
        <translation>%1 wurde an %2 nicht gemessen. Andere Größe oder anderen Kanal wählen.</translation>
    </message>
    <message>
        <source>No recording of %1 has both %2 and %3. Draw it over time, or against something else.</source>
        <translation>Keine Aufzeichnung von %1 hat sowohl %2 als auch %3. Über der Zeit oder gegen etwas anderes auftragen.</translation>
    </message>
    <message>
        <source>Limits: %1.</source>
        <translation>Grenzen: %1.</translation>
    </message>
    <message>
        <source>New baseline…</source>
        <translation>Neues Ausgangsband…</translation>
    </message>
    <message>
        <source>Begin a new baseline</source>
        <translation>Ein neues Ausgangsband beginnen</translation>
    </message>
    <message>
        <source>Begins a baseline at the moment chosen in the trend: the days from then on, 14 at least over two weekends</source>
        <translation>Beginnt ein Ausgangsband am im Trend gewählten Zeitpunkt: die Tage von da an, mindestens 14 über zwei Wochenenden</translation>
    </message>
</context>
<context>
    <name>fettle::MachinePage</name>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>No machine is chosen. Open one from the round or the register.</source>
        <translation>Keine Maschine gewählt. Eine aus der Runde oder den Stammdaten öffnen.</translation>
    </message>
    <message>
        <source>Reading %1 …</source>
        <translation>%1 wird gelesen …</translation>
    </message>
    <message>
        <source>No recording of %1 yet. Import recordings to see its waterfall, trend and evidence.</source>
        <translation>Noch keine Aufzeichnung von %1. Für Wasserfall, Trend und Belege Aufzeichnungen einlesen.</translation>
    </message>
    <message>
        <source>No running recording in the week to %1, so nothing was weighed. Choose another moment in the trend.</source>
        <translation>Keine Aufzeichnung in Betrieb in der Woche bis %1, daher wurde nichts gewichtet. Anderen Zeitpunkt im Trend wählen.</translation>
    </message>
    <message>
        <source>Channel of waterfall, trend and spectra</source>
        <translation>Kanal für Wasserfall, Trend und Spektren</translation>
    </message>
    <message>
        <source>Spectrum</source>
        <translation>Spektrum</translation>
    </message>
    <message>
        <source>Envelope spectrum</source>
        <translation>Hüllkurvenspektrum</translation>
    </message>
    <message>
        <source>Findings &amp;sheet…</source>
        <translation>&amp;Befundblatt…</translation>
    </message>
    <message>
        <source>Note or eve&amp;nt…</source>
        <translation>Notiz oder Ereig&amp;nis…</translation>
    </message>
    <message>
        <source>Kind of spectrum</source>
        <translation>Art des Spektrums</translation>
    </message>
    <message>
        <source>Evidence</source>
        <translation>Belege</translation>
    </message>
    <message>
        <source>Envelope</source>
        <translation>Hüllkurve</translation>
    </message>
    <message>
        <source>Waveform</source>
        <translation>Zeitsignal</translation>
    </message>
    <message>
        <source>Orbit</source>
        <translation>Orbit</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Historie</translation>
    </message>
    <message>
        <source>Waterfall</source>
        <translation>Wasserfall</translation>
    </message>
    <message>
        <source>Trend</source>
        <translation>Trend</translation>
    </message>
    <message>
        <source>velocity</source>
        <translation>Geschwindigkeit</translation>
    </message>
    <message>
        <source>displacement</source>
        <translation>Schwingweg</translation>
    </message>
    <message>
        <source>No envelope of %1: it needs a channel of acceleration.</source>
        <translation>Keine Hüllkurve von %1: dafür ist ein Beschleunigungskanal nötig.</translation>
    </message>
    <message>
        <source>No spectrum of %1.</source>
        <translation>Kein Spektrum von %1.</translation>
    </message>
    <message>
        <source>The samples of this recording are no longer kept, or never came.
Waterfall and trend still show it; choose another recording or channel for its full spectra.</source>
        <translation>Die Abtastwerte dieser Aufnahme werden nicht mehr aufbewahrt oder kamen nie.
Wasserfall und Trend zeigen sie weiterhin; volle Spektren hat eine andere Aufnahme oder ein anderer Kanal.</translation>
    </message>
</context>
<context>
    <name>fettle::MainWindow</name>
    <message>
        <source>&amp;File</source>
        <translation>&amp;Datei</translation>
    </message>
    <message>
        <source>&amp;Round</source>
        <translation>&amp;Runde</translation>
    </message>
    <message>
        <source>&amp;Machine</source>
        <translation>&amp;Maschine</translation>
    </message>
    <message>
        <source>&amp;Help</source>
        <translation>&amp;Hilfe</translation>
    </message>
    <message>
        <source>&amp;View</source>
        <translation>&amp;Sicht</translation>
    </message>
    <message>
        <source>&amp;System&apos;s colours</source>
        <translation>&amp;Systemfarben</translation>
    </message>
    <message>
        <source>&amp;Light</source>
        <translation>&amp;Hell</translation>
    </message>
    <message>
        <source>&amp;Dark</source>
        <translation>&amp;Dunkel</translation>
    </message>
    <message>
        <source>Opening %1</source>
        <translation>%1 wird geöffnet</translation>
    </message>
    <message>
        <source>Fettle</source>
        <translation>Fettle</translation>
    </message>
    <message>
        <source>%1 - Fettle</source>
        <translation>%1 - Fettle</translation>
    </message>
    <message>
        <source>%1 at work</source>
        <translation>%1 in Arbeit</translation>
    </message>
    <message>
        <source>ready</source>
        <translation>bereit</translation>
    </message>
    <message>
        <source>Open a fleet</source>
        <translation>Flotte öffnen</translation>
    </message>
    <message>
        <source>Fleet files (*.fettle);;All files (*)</source>
        <translation>Flottendateien (*.fettle);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Back up to</source>
        <translation>Sichern nach</translation>
    </message>
    <message>
        <source>Fleet files (*.fettle)</source>
        <translation>Flottendateien (*.fettle)</translation>
    </message>
    <message>
        <source>%1 %</source>
        <translation>%1 %</translation>
    </message>
    <message>
        <source>Open or make a fleet first; recordings go into its file.</source>
        <translation>Erst eine Flotte öffnen oder anlegen; Aufzeichnungen gehen in deren Datei.</translation>
    </message>
</context>
<context>
    <name>fettle::MoveModel</name>
    <message>
        <source>nothing</source>
        <translation>nichts</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>%1. %2</source>
        <translation>%1. %2</translation>
    </message>
    <message>
        <source>%1; then %2</source>
        <translation>%1; dann %2</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Move</source>
        <translation>Änderung</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>Decided then, and now</source>
        <translation>Entschieden damals und jetzt</translation>
    </message>
</context>
<context>
    <name>fettle::NewFleetDialog</name>
    <message>
        <source>New fleet</source>
        <translation>Neue Flotte</translation>
    </message>
    <message>
        <source>Make the fleet file</source>
        <translation>Flottendatei anlegen</translation>
    </message>
    <message>
        <source>One file holds one site: its machines, recordings, rounds and decisions. It is a SQLite database on this computer&apos;s own disk; a network drive cannot hold it safely.</source>
        <translation>Eine Datei hält einen Standort: seine Maschinen, Aufzeichnungen, Runden und Entscheidungen. Sie ist eine SQLite-Datenbank auf dem eigenen Datenträger dieses Rechners; ein Netzlaufwerk kann sie nicht sicher halten.</translation>
    </message>
    <message>
        <source>Choose…</source>
        <translation>Wählen…</translation>
    </message>
    <message>
        <source>Site</source>
        <translation>Standort</translation>
    </message>
    <message>
        <source>Time zone</source>
        <translation>Zeitzone</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>The site needs a name.</source>
        <translation>Der Standort braucht einen Namen.</translation>
    </message>
    <message>
        <source>The time zone is not known; it is named like Europe/London or UTC.</source>
        <translation>Die Zeitzone ist unbekannt; sie heißt etwa Europe/London oder UTC.</translation>
    </message>
    <message>
        <source>The file needs a name.</source>
        <translation>Die Datei braucht einen Namen.</translation>
    </message>
    <message>
        <source>A file of this name is already there; it is not replaced.</source>
        <translation>Eine Datei dieses Namens ist schon da; sie wird nicht ersetzt.</translation>
    </message>
    <message>
        <source>The folder is not there.</source>
        <translation>Der Ordner ist nicht da.</translation>
    </message>
    <message>
        <source>New fleet file</source>
        <translation>Neue Flottendatei</translation>
    </message>
    <message>
        <source>Fleet files (*.fettle)</source>
        <translation>Flottendateien (*.fettle)</translation>
    </message>
</context>
<context>
    <name>fettle::OptionalDate</name>
    <message>
        <source>There is such a day</source>
        <translation>Tag bekannt</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
</context>
<context>
    <name>fettle::OrbitPlot</name>
    <message>
        <source>Orbit</source>
        <translation>Orbit</translation>
    </message>
    <message>
        <source>Of which orders the orbit is made</source>
        <translation>Aus welchen Ordnungen der Orbit gebildet wird</translation>
    </message>
    <message>
        <source>1x</source>
        <translation>1x</translation>
    </message>
    <message>
        <source>2x</source>
        <translation>2x</translation>
    </message>
    <message>
        <source>1x and 2x</source>
        <translation>1x und 2x</translation>
    </message>
    <message>
        <source>1x to 5x</source>
        <translation>1x bis 5x</translation>
    </message>
    <message>
        <source>unfiltered</source>
        <translation>ungefiltert</translation>
    </message>
    <message>
        <source>What the orbit shows and what it cannot</source>
        <translation>Was die Wellenbahn zeigt und was nicht</translation>
    </message>
    <message>
        <source>Seen by sensors on the housing: its motion, not the shaft&apos;s within the bearing.</source>
        <translation>Von Sensoren am Gehäuse gesehen: dessen Bewegung, nicht die der Welle im Lager.</translation>
    </message>
    <message>
        <source>The dot is the once-per-turn mark.</source>
        <translation>Der Punkt ist die Marke einmal je Umdrehung.</translation>
    </message>
    <message>
        <source>No once-per-turn mark was recorded: where a turn begins, where the heavy spot is and whether the path runs with the shaft or against it cannot be told.</source>
        <translation>Keine Marke einmal je Umdrehung aufgezeichnet: wo eine Umdrehung beginnt, wo die schwere Stelle liegt und ob die Bahn mit oder gegen die Welle läuft, lässt sich nicht sagen.</translation>
    </message>
    <message>
        <source>%1, %2 peak</source>
        <translation>%1, %2 Spitze</translation>
    </message>
    <message>
        <source>%1, um	%2, um
</source>
        <translation>%1, um	%2, um
</translation>
    </message>
</context>
<context>
    <name>fettle::OutlineView</name>
    <message>
        <source>Outline of the first channel</source>
        <translation>Umriss des ersten Kanals</translation>
    </message>
    <message>
        <source>from %1 to %2 %3</source>
        <translation>von %1 bis %2 %3</translation>
    </message>
</context>
<context>
    <name>fettle::PageFlow</name>
    <message>
        <source>%1, continued</source>
        <translation>%1, Fortsetzung</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
</context>
<context>
    <name>fettle::PagePreview</name>
    <message>
        <source>The page as it will be printed</source>
        <translation>Die Seite, wie sie gedruckt wird</translation>
    </message>
    <message>
        <source>Pages as they will be printed</source>
        <translation>Seiten, wie sie gedruckt werden</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Paper the pages are laid out for</source>
        <translation>Papier, für das die Seiten umbrochen sind</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>Smaller</source>
        <translation>Kleiner</translation>
    </message>
    <message>
        <source>Larger</source>
        <translation>Größer</translation>
    </message>
    <message>
        <source>width</source>
        <translation>Breite</translation>
    </message>
    <message>
        <source>As wide as the window</source>
        <translation>So breit wie das Fenster</translation>
    </message>
</context>
<context>
    <name>fettle::PastMarks</name>
    <message>
        <source>baseline</source>
        <translation>Ausgangsband</translation>
    </message>
    <message>
        <source>apart since</source>
        <translation>abweichend seit</translation>
    </message>
</context>
<context>
    <name>fettle::PhotoStrip</name>
    <message>
        <source>Photographs</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Enter shows a photograph large, Del takes it out</source>
        <translation>Die Eingabetaste zeigt ein Foto groß, Entf nimmt es heraus</translation>
    </message>
    <message>
        <source>Enter shows a photograph large</source>
        <translation>Die Eingabetaste zeigt ein Foto groß</translation>
    </message>
    <message>
        <source>JPEG or PNG, at most %1 MB each</source>
        <translation>JPEG oder PNG, je höchstens %1 MB</translation>
    </message>
    <message>
        <source>Photo&amp;graphs…</source>
        <translation>&amp;Fotos…</translation>
    </message>
    <message>
        <source>Choose photographs, or drop them here, or paste one with Ctrl+V; they are kept as given</source>
        <translation>Fotos wählen, hierher ziehen oder mit Strg+V einfügen; sie werden unverändert aufbewahrt</translation>
    </message>
    <message>
        <source>pasted.png</source>
        <translation>eingefuegt.png</translation>
    </message>
    <message>
        <source>Pictures (*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG)</source>
        <translation>Bilder (*.jpg *.jpeg *.png *.JPG *.JPEG *.PNG)</translation>
    </message>
    <message>
        <source>There is no picture to paste.</source>
        <translation>Kein Bild zum Einfügen vorhanden.</translation>
    </message>
</context>
<context>
    <name>fettle::PhotoViewer</name>
    <message>
        <source>Photographs of %1</source>
        <translation>Fotos von %1</translation>
    </message>
    <message>
        <source>The photograph</source>
        <translation>Das Foto</translation>
    </message>
    <message>
        <source>&amp;Before</source>
        <translation>&amp;Voriges</translation>
    </message>
    <message>
        <source>&amp;Next</source>
        <translation>&amp;Nächstes</translation>
    </message>
    <message>
        <source>&amp;Save as given…</source>
        <translation>&amp;Unverändert speichern…</translation>
    </message>
    <message>
        <source>%1, %2 of %3</source>
        <translation>%1, %2 von %3</translation>
    </message>
    <message>
        <source>Save the photograph</source>
        <translation>Foto speichern</translation>
    </message>
    <message>
        <source>%1 is the fleet file or a part of it and is left as it is.</source>
        <translation>%1 ist die Flottendatei oder ein Teil davon und bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Saved as %1</source>
        <translation>Gespeichert als %1</translation>
    </message>
</context>
<context>
    <name>fettle::PlotFrame</name>
    <message>
        <source>Copy as table, all data</source>
        <translation>Als Tabelle kopieren, alle Daten</translation>
    </message>
    <message>
        <source>This plot has no table to copy.</source>
        <translation>Dieses Diagramm hat keine Tabelle zum Kopieren.</translation>
    </message>
    <message>
        <source>Table of all data (*.csv)</source>
        <translation>Tabelle aller Daten (*.csv)</translation>
    </message>
    <message>
        <source>Save the plot</source>
        <translation>Diagramm speichern</translation>
    </message>
    <message>
        <source>Picture (*.png)</source>
        <translation>Bild (*.png)</translation>
    </message>
    <message>
        <source>Drawing (*.svg)</source>
        <translation>Zeichnung (*.svg)</translation>
    </message>
    <message>
        <source>Document (*.pdf)</source>
        <translation>Dokument (*.pdf)</translation>
    </message>
    <message>
        <source>Table as shown (*.csv)</source>
        <translation>Tabelle wie gezeigt (*.csv)</translation>
    </message>
    <message>
        <source>Saved: %1</source>
        <translation>Gespeichert: %1</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>Too many numbers to copy: save them as a table instead.</source>
        <translation>Zu viele Zahlen zum Kopieren: stattdessen als Tabelle speichern.</translation>
    </message>
    <message>
        <source>This plot has no table to save.</source>
        <translation>Zu diesem Bild gibt es keine Tabelle.</translation>
    </message>
    <message>
        <source>Saving %1 …</source>
        <translation>%1 wird gespeichert …</translation>
    </message>
</context>
<context>
    <name>fettle::PolarDrawing</name>
    <message>
        <source>Vibration of the runs as arrows</source>
        <translation>Schwingung der Läufe als Zeiger</translation>
    </message>
</context>
<context>
    <name>fettle::PreferencesDialog</name>
    <message>
        <source>Preferences</source>
        <translation>Einstellungen</translation>
    </message>
    <message>
        <source>Use these</source>
        <translation>Übernehmen</translation>
    </message>
    <message>
        <source>mm/s</source>
        <translation>mm/s</translation>
    </message>
    <message>
        <source>in/s</source>
        <translation>in/s</translation>
    </message>
    <message>
        <source>Hz</source>
        <translation>Hz</translation>
    </message>
    <message>
        <source>r/min</source>
        <translation>r/min</translation>
    </message>
    <message>
        <source>°C</source>
        <translation>°C</translation>
    </message>
    <message>
        <source>°F</source>
        <translation>°F</translation>
    </message>
    <message>
        <source>Velocity in</source>
        <translation>Geschwindigkeit in</translation>
    </message>
    <message>
        <source>Frequency in</source>
        <translation>Frequenz in</translation>
    </message>
    <message>
        <source>Temperature in</source>
        <translation>Temperatur in</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>as the system</source>
        <translation>wie das System</translation>
    </message>
    <message>
        <source>light</source>
        <translation>hell</translation>
    </message>
    <message>
        <source>dark</source>
        <translation>dunkel</translation>
    </message>
    <message>
        <source> %</source>
        <translation> %</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>Colours</source>
        <translation>Farben</translation>
    </message>
    <message>
        <source>Size of everything</source>
        <translation>Anzeigegröße</translation>
    </message>
    <message>
        <source>Language</source>
        <translation>Sprache</translation>
    </message>
    <message>
        <source>Sign decisions as</source>
        <translation>Entscheidungen zeichnen als</translation>
    </message>
    <message>
        <source>The language holds from the next start, all else at once.</source>
        <translation>Die Sprache gilt ab dem nächsten Start, alles andere sofort.</translation>
    </message>
    <message>
        <source>Units are those of reading: the fleet file and everything exported stay in mm/s, Hz and degrees Celsius.</source>
        <translation>Einheiten gelten für die Anzeige: die Flottendatei und alles Ausgegebene bleiben in mm/s, Hz und Grad Celsius.</translation>
    </message>
</context>
<context>
    <name>fettle::PreviewDialog</name>
    <message>
        <source>&amp;Stop</source>
        <translation>&amp;Anhalten</translation>
    </message>
    <message>
        <source>&amp;Keep as a rule</source>
        <translation>Als &amp;Regel ablegen</translation>
    </message>
    <message>
        <source>R&amp;ules…</source>
        <translation>Re&amp;geln…</translation>
    </message>
    <message>
        <source>&amp;Take in</source>
        <translation>&amp;Einlesen</translation>
    </message>
    <message>
        <source>What the files were taken for</source>
        <translation>Wofür die Dateien gehalten wurden</translation>
    </message>
    <message>
        <source>%1 of %2: %3</source>
        <translation>%1 von %2: %3</translation>
    </message>
    <message>
        <source>Files read</source>
        <translation>Gelesene Dateien</translation>
    </message>
    <message>
        <source>What is ready comes in; the rest is listed as refused or parked.</source>
        <translation>Was bereit ist, wird eingelesen; der Rest wird als abgewiesen oder zurückgestellt aufgeführt.</translation>
    </message>
    <message>
        <source>Kinds of files</source>
        <translation>Arten von Dateien</translation>
    </message>
    <message>
        <source>Facts of the file and where each came from</source>
        <translation>Angaben zur Datei und ihre Herkunft</translation>
    </message>
    <message>
        <source>What the rule is for</source>
        <translation>Wofür die Regel gilt</translation>
    </message>
    <message>
        <source>for all files like it</source>
        <translation>für alle solchen Dateien</translation>
    </message>
    <message>
        <source>for this file alone</source>
        <translation>nur für diese Datei</translation>
    </message>
    <message>
        <source>Pattern of the path</source>
        <translation>Muster des Pfads</translation>
    </message>
    <message>
        <source>* within a name, ** across folders; {machine}, {point} and {time_utc} where the name says that; {time_utc} is fourteen digits, year to second, UTC</source>
        <translation>* innerhalb eines Namens, ** über Ordner hinweg; {machine}, {point} und {time_utc}, wo der Name dies angibt; {time_utc} sind vierzehn Ziffern, Jahr bis Sekunde, UTC</translation>
    </message>
    <message>
        <source>The files are being read.</source>
        <translation>Die Dateien werden gelesen.</translation>
    </message>
    <message>
        <source>%1 ready · %2 already in · %3 would be parked · %4 would be refused</source>
        <translation>%1 bereit · %2 schon vorhanden · %3 würden zurückgestellt · %4 würden abgewiesen</translation>
    </message>
    <message>
        <source>No recordings were found there.</source>
        <translation>Dort wurden keine Aufzeichnungen gefunden.</translation>
    </message>
    <message>
        <source>by the rule %1</source>
        <translation>nach der Regel %1</translation>
    </message>
    <message>
        <source>The pattern takes %1 of the %2 files.</source>
        <translation>Das Muster erfasst %1 der %2 Dateien.</translation>
    </message>
</context>
<context>
    <name>fettle::PreviewFactModel</name>
    <message>
        <source>file</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>sidecar</source>
        <translation>Begleitdatei</translation>
    </message>
    <message>
        <source>rule</source>
        <translation>Regel</translation>
    </message>
    <message>
        <source>register</source>
        <translation>Stammdaten</translation>
    </message>
    <message>
        <source>nobody says</source>
        <translation>ohne Angabe</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Point</source>
        <translation>Messpunkt</translation>
    </message>
    <message>
        <source>Time, UTC</source>
        <translation>Zeit, UTC</translation>
    </message>
    <message>
        <source>Speed, r/min</source>
        <translation>Drehzahl, r/min</translation>
    </message>
    <message>
        <source>Channel %1</source>
        <translation>Kanal %1</translation>
    </message>
    <message>
        <source>   quantity</source>
        <translation>   Größe</translation>
    </message>
    <message>
        <source>   unit</source>
        <translation>   Einheit</translation>
    </message>
    <message>
        <source>   scale</source>
        <translation>   Skalierung</translation>
    </message>
    <message>
        <source>   direction</source>
        <translation>   Richtung</translation>
    </message>
    <message>
        <source>   point</source>
        <translation>   Messpunkt</translation>
    </message>
    <message>
        <source>Can be typed; kept as a rule it holds for all files of the pattern.</source>
        <translation>Kann eingegeben werden; als Regel abgelegt, gilt es für alle Dateien des Musters.</translation>
    </message>
    <message>
        <source>%1 says so; a rule does not change it.</source>
        <translation>Stammt aus: %1; eine Regel ändert es nicht.</translation>
    </message>
    <message>
        <source>typed, not kept yet</source>
        <translation>eingegeben, noch nicht abgelegt</translation>
    </message>
    <message>
        <source>Fact</source>
        <translation>Angabe</translation>
    </message>
    <message>
        <source>Value</source>
        <translation>Wert</translation>
    </message>
    <message>
        <source>From</source>
        <translation>Herkunft</translation>
    </message>
</context>
<context>
    <name>fettle::PreviewGroupModel</name>
    <message>
        <source>ready</source>
        <translation>bereit</translation>
    </message>
    <message>
        <source>already in</source>
        <translation>schon vorhanden</translation>
    </message>
    <message>
        <source>would be parked</source>
        <translation>würde zurückgestellt</translation>
    </message>
    <message>
        <source>would be refused</source>
        <translation>würde abgewiesen</translation>
    </message>
    <message>
        <source>%1 and %2 like it</source>
        <translation>%1 und %2 gleichartige</translation>
    </message>
    <message>
        <source>%1 Hz, %2 s</source>
        <translation>%1 Hz, %2 s</translation>
    </message>
    <message>
        <source>Files</source>
        <translation>Dateien</translation>
    </message>
    <message>
        <source>State</source>
        <translation>Stand</translation>
    </message>
    <message>
        <source>Format</source>
        <translation>Format</translation>
    </message>
    <message>
        <source>Rate</source>
        <translation>Abtastrate</translation>
    </message>
    <message>
        <source>Channels</source>
        <translation>Kanäle</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>What keeps it out</source>
        <translation>Hindernis</translation>
    </message>
</context>
<context>
    <name>fettle::QuantityPicker</name>
    <message>
        <source>quantity</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>%1, %2 more</source>
        <translation>%1, %2 weitere</translation>
    </message>
    <message>
        <source>Quantities of the trend: %1</source>
        <translation>Größen des Trends: %1</translation>
    </message>
    <message>
        <source>Quantities, ticked: shown; at most four, of two units</source>
        <translation>Größen, angekreuzt: gezeigt; höchstens vier, mit zwei Einheiten</translation>
    </message>
    <message>
        <source>Find a quantity</source>
        <translation>Größe suchen</translation>
    </message>
    <message>
        <source>Find: gear, 2x, temperature …</source>
        <translation>Suchen: Zahnrad, 2x, Temperatur …</translation>
    </message>
    <message>
        <source>At most four at once, of two units.</source>
        <translation>Höchstens vier zugleich, mit zwei Einheiten.</translation>
    </message>
</context>
<context>
    <name>fettle::ReExamineDialog</name>
    <message>
        <source>appeared</source>
        <translation>erschienen</translation>
    </message>
    <message>
        <source>more urgent</source>
        <translation>dringender</translation>
    </message>
    <message>
        <source>vanished</source>
        <translation>verschwunden</translation>
    </message>
    <message>
        <source>less urgent</source>
        <translation>weniger dringend</translation>
    </message>
    <message>
        <source>weight moved</source>
        <translation>Gewicht verschoben</translation>
    </message>
    <message>
        <source>not named</source>
        <translation>nicht genannt</translation>
    </message>
    <message>
        <source>Weigh again what is kept raw</source>
        <translation>Neu wägen, was roh aufgehoben ist</translation>
    </message>
    <message>
        <source>Machines to weigh again</source>
        <translation>Neu zu wägende Maschinen</translation>
    </message>
    <message>
        <source>Whose recordings are weighed again</source>
        <translation>Wessen Aufzeichnungen neu gewogen werden</translation>
    </message>
    <message>
        <source>all machines</source>
        <translation>alle Maschinen</translation>
    </message>
    <message>
        <source>also what this engine &amp;weighed</source>
        <translation>auch was dieser &amp;Stand gewogen hat</translation>
    </message>
    <message>
        <source>After a description was corrected: verdicts of today&apos;s engine are weighed again too</source>
        <translation>Nach der Berichtigung einer Beschreibung: auch Urteile von heute werden neu gewogen</translation>
    </message>
    <message>
        <source>&amp;Weigh again</source>
        <translation>&amp;Neu wägen</translation>
    </message>
    <message>
        <source>Recordings whose waveform is no longer kept stay as they were weighed</source>
        <translation>Aufzeichnungen ohne aufgehobenes Zeitsignal bleiben, wie sie gewogen sind</translation>
    </message>
    <message>
        <source>&amp;Stop</source>
        <translation>A&amp;nhalten</translation>
    </message>
    <message>
        <source>What was weighed stays; starting again carries on</source>
        <translation>Was gewogen ist, bleibt; ein neuer Start setzt fort</translation>
    </message>
    <message>
        <source>Stopping; what was weighed stays.</source>
        <translation>Hält an; was gewogen ist, bleibt.</translation>
    </message>
    <message>
        <source>Weighs recordings with today&apos;s engine and the descriptions that held then, and keeps old verdicts beside new ones. The open round stays as it is.</source>
        <translation>Wägt Aufzeichnungen mit dem heutigen Stand und den damals geltenden Beschreibungen und hält alte Urteile neben neuen fest. Die offene Runde bleibt, wie sie ist.</translation>
    </message>
    <message>
        <source>Listed by</source>
        <translation>Gelistet nach</translation>
    </message>
    <message>
        <source>One line a verdict, or counted by family of faults or by machine</source>
        <translation>Eine Zeile je Urteil oder gezählt nach Fehlerfamilie oder Maschine</translation>
    </message>
    <message>
        <source>by verdict</source>
        <translation>nach Urteil</translation>
    </message>
    <message>
        <source>by family</source>
        <translation>nach Familie</translation>
    </message>
    <message>
        <source>by machine</source>
        <translation>nach Maschine</translation>
    </message>
    <message>
        <source>Least move of a weight that is listed</source>
        <translation>Kleinste gelistete Verschiebung eines Gewichts</translation>
    </message>
    <message>
        <source>Decibans by which a weight must have moved to be listed</source>
        <translation>Um so viele Deziban muss sich ein Gewicht verschoben haben, um gelistet zu werden</translation>
    </message>
    <message>
        <source> decibans</source>
        <translation> Deziban</translation>
    </message>
    <message>
        <source>What was weighed differently</source>
        <translation>Was anders gewogen wurde</translation>
    </message>
    <message>
        <source>What is to be weighed is being looked up.</source>
        <translation>Es wird nachgesehen, was zu wägen ist.</translation>
    </message>
    <message>
        <source>%1 of %2 recordings: %3</source>
        <translation>%1 von %2 Aufzeichnungen: %3</translation>
    </message>
    <message>
        <source>Stopped: %1 weighed again, %2 already by this engine, %3 without their waveform keep their verdict, %4 no longer fit their description. Starting again carries on.</source>
        <translation>Angehalten: %1 neu gewogen, %2 schon von diesem Stand, %3 ohne Zeitsignal behalten ihr Urteil, %4 passen nicht mehr zu ihrer Beschreibung. Ein neuer Start setzt fort.</translation>
    </message>
    <message>
        <source>%1 weighed again, %2 already by this engine, %3 without their waveform keep their verdict, %4 no longer fit their description.</source>
        <translation>%1 neu gewogen, %2 schon von diesem Stand, %3 ohne Zeitsignal behalten ihr Urteil, %4 passen nicht mehr zu ihrer Beschreibung.</translation>
    </message>
    <message>
        <source>Nothing was weighed again in this fleet file yet.</source>
        <translation>In dieser Flottendatei wurde noch nichts neu gewogen.</translation>
    </message>
    <message>
        <source>%1: %2 recordings weighed again by %3; %4 verdicts came out differently.</source>
        <translation>%1: %2 Aufzeichnungen neu gewogen von %3; %4 Urteile fielen anders aus.</translation>
    </message>
    <message>
        <source>%1, not finished: %2 recordings weighed again by %3; %4 verdicts came out differently.</source>
        <translation>%1, nicht fertig: %2 Aufzeichnungen neu gewogen von %3; %4 Urteile fielen anders aus.</translation>
    </message>
    <message>
        <source>Machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>What changed</source>
        <translation>Was sich änderte</translation>
    </message>
    <message>
        <source>Urgency before</source>
        <translation>Dringlichkeit vorher</translation>
    </message>
    <message>
        <source>Now</source>
        <translation>Jetzt</translation>
    </message>
    <message>
        <source>Decibans before</source>
        <translation>Deziban vorher</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>Family</source>
        <translation>Familie</translation>
    </message>
    <message>
        <source>Verdicts</source>
        <translation>Urteile</translation>
    </message>
    <message>
        <source>Appeared</source>
        <translation>Erschienen</translation>
    </message>
    <message>
        <source>More urgent</source>
        <translation>Dringender</translation>
    </message>
    <message>
        <source>Vanished</source>
        <translation>Verschwunden</translation>
    </message>
    <message>
        <source>Less urgent</source>
        <translation>Weniger dringend</translation>
    </message>
    <message>
        <source>Moved</source>
        <translation>Verschoben</translation>
    </message>
    <message>
        <source>Largest move, decibans</source>
        <translation>Größte Verschiebung, Deziban</translation>
    </message>
</context>
<context>
    <name>fettle::RebaselineDialog</name>
    <message>
        <source>New baseline: %1</source>
        <translation>Neues Ausgangsband: %1</translation>
    </message>
    <message>
        <source>Begin a new baseline</source>
        <translation>Neues Ausgangsband beginnen</translation>
    </message>
    <message>
        <source>From this moment on, changes of this machine are weighed against what it does afterwards: its trends begin a new segment, and the first six weeks of running become the new baseline. Until there are at least 14 days of it no change is weighed. Zones, limits and the lines of bearings are judged as before. The old baseline stays in the fleet file and is still used to verify earlier work. A repair or a new part begins a baseline by itself.</source>
        <translation>Ab diesem Zeitpunkt werden Änderungen dieser Maschine gegen ihr Verhalten danach gewichtet: ihre Trends beginnen einen neuen Abschnitt, und die ersten sechs Wochen in Betrieb werden das neue Ausgangsband. Bis davon mindestens 14 Tage vorliegen, wird keine Änderung gewichtet. Zonen, Grenzen und Lagerlinien werden beurteilt wie zuvor. Das alte Ausgangsband bleibt in der Flottendatei und dient weiter dazu, frühere Arbeiten nachzuweisen. Eine Reparatur oder ein neues Teil beginnt von selbst ein Ausgangsband.</translation>
    </message>
    <message>
        <source>From, %1</source>
        <translation>Ab, %1</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>A reason is needed: it stands in the machine&apos;s history.</source>
        <translation>Ein Grund ist nötig: er steht in der Historie der Maschine.</translation>
    </message>
</context>
<context>
    <name>fettle::RecordingBench</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1 of %2</source>
        <translation>%1 von %2</translation>
    </message>
    <message>
        <source>Keep this recording as reference (K)</source>
        <translation>Diese Aufzeichnung als Referenz ablegen (K)</translation>
    </message>
    <message>
        <source>Reference: none kept</source>
        <translation>Referenz: keine abgelegt</translation>
    </message>
    <message>
        <source>Reference: %1</source>
        <translation>Referenz: %1</translation>
    </message>
    <message>
        <source>Band of the sound machine</source>
        <translation>Band der gesunden Maschine</translation>
    </message>
    <message>
        <source>Lines of a bearing</source>
        <translation>Linien eines Lagers</translation>
    </message>
    <message>
        <source>none</source>
        <translation>keine</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
    <message>
        <source>Designation of a bearing</source>
        <translation>Bezeichnung eines Lagers</translation>
    </message>
    <message>
        <source>Designation of any bearing of the table, on the driver&apos;s shaft; Return shows its lines</source>
        <translation>Bezeichnung eines beliebigen Lagers der Tabelle, auf der Welle des Antriebs; die Eingabetaste zeigt seine Linien</translation>
    </message>
    <message>
        <source>designation, Return</source>
        <translation>Bezeichnung, Eingabe</translation>
    </message>
    <message>
        <source>%1: likely and farthest range of its lines</source>
        <translation>%1: wahrscheinlicher und äußerster Bereich der Linien</translation>
    </message>
    <message>
        <source>%1 (%2, typical): likely and farthest range of its lines</source>
        <translation>%1 (%2, typisch): wahrscheinlicher und äußerster Bereich der Linien</translation>
    </message>
    <message>
        <source>No band of the sound machine: %1.</source>
        <translation>Kein Band der gesunden Maschine: %1.</translation>
    </message>
    <message>
        <source>reference: %1</source>
        <translation>Referenz: %1</translation>
    </message>
    <message>
        <source>Reading the other places …</source>
        <translation>Die anderen Stellen werden gelesen …</translation>
    </message>
    <message>
        <source>times the floor</source>
        <translation>Vielfaches des Grundrauschens</translation>
    </message>
    <message>
        <source>No other place of this machine and no twin of it was recorded within three days of this moment.</source>
        <translation>Keine andere Stelle dieser Maschine und keine Schwestermaschine wurde innerhalb von drei Tagen um diesen Zeitpunkt aufgezeichnet.</translation>
    </message>
    <message>
        <source>Keep no reference</source>
        <translation>Keine Referenz behalten</translation>
    </message>
    <message>
        <source>%1 is not in the table of bearings with its inner build; the machine&apos;s own are in the register.</source>
        <translation>%1 steht mit seinem inneren Aufbau nicht in der Lagertabelle; die eigenen Lager der Maschine stehen in den Stammdaten.</translation>
    </message>
    <message>
        <source>Kept as reference: %1. It is laid over the other recordings of this point, next time too.</source>
        <translation>Als Referenz behalten: %1. Sie liegt über den anderen Aufzeichnungen dieses Messpunkts, auch beim nächsten Mal.</translation>
    </message>
    <message>
        <source>No reference is kept for this point any more.</source>
        <translation>Für diesen Messpunkt wird keine Referenz mehr behalten.</translation>
    </message>
</context>
<context>
    <name>fettle::RefusalModel</name>
    <message>
        <source>parked</source>
        <translation>zurückgestellt</translation>
    </message>
    <message>
        <source>refused</source>
        <translation>abgewiesen</translation>
    </message>
    <message>
        <source>File</source>
        <translation>Datei</translation>
    </message>
    <message>
        <source>Place</source>
        <translation>Ort</translation>
    </message>
    <message>
        <source>Rule</source>
        <translation>Regel</translation>
    </message>
    <message>
        <source>Kind</source>
        <translation>Art</translation>
    </message>
    <message>
        <source>Since</source>
        <translation>Seit</translation>
    </message>
    <message>
        <source>Times</source>
        <translation>Anzahl</translation>
    </message>
</context>
<context>
    <name>fettle::RefusalsDialog</name>
    <message>
        <source>answered ones too</source>
        <translation>auch beantwortete</translation>
    </message>
    <message>
        <source>&amp;Answered</source>
        <translation>&amp;Beantwortet</translation>
    </message>
    <message>
        <source>&amp;What were they taken for…</source>
        <translation>&amp;Wofür gehalten…</translation>
    </message>
    <message>
        <source>Refused files</source>
        <translation>Abgewiesene Dateien</translation>
    </message>
    <message>
        <source>Shows the files once more; what is missing can be typed and kept as a rule, and what is mended comes in.</source>
        <translation>Zeigt die Dateien noch einmal; Fehlendes kann eingegeben und als Regel abgelegt werden, und was berichtigt ist, wird eingelesen.</translation>
    </message>
    <message>
        <source>Nothing refused waits for an answer.</source>
        <translation>Nichts Abgewiesenes wartet auf Antwort.</translation>
    </message>
    <message>
        <source>%1 files; import them again once mended, or mark them answered.</source>
        <translation>%1 Dateien; nach Berichtigung erneut einlesen oder als beantwortet kennzeichnen.</translation>
    </message>
</context>
<context>
    <name>fettle::RegisterPage</name>
    <message>
        <source>Choose a machine at the left, or take a new one into the register.</source>
        <translation>Links eine Maschine wählen oder eine neue in die Stammdaten aufnehmen.</translation>
    </message>
    <message>
        <source>Bearings, by designation, geometry or orders</source>
        <translation>Lager, nach Bezeichnung, Geometrie oder Ordnungen</translation>
    </message>
    <message>
        <source>Shafts, where there is more than one</source>
        <translation>Wellen, wo es mehr als eine gibt</translation>
    </message>
    <message>
        <source>Gears</source>
        <translation>Zahnradpaare</translation>
    </message>
    <message>
        <source>Belts</source>
        <translation>Riemen</translation>
    </message>
    <message>
        <source>Gearboxes and bearing stands between</source>
        <translation>Getriebe und Lagerböcke dazwischen</translation>
    </message>
    <message>
        <source>Measuring points</source>
        <translation>Messpunkte</translation>
    </message>
    <message>
        <source>Channels</source>
        <translation>Kanäle</translation>
    </message>
    <message>
        <source>Sensor nodes fitted</source>
        <translation>Angebaute Sensorknoten</translation>
    </message>
    <message>
        <source>Fault</source>
        <translation>Fehler</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Why it cannot be seen</source>
        <translation>Warum er nicht zu sehen ist</translation>
    </message>
    <message>
        <source>What would help</source>
        <translation>Was helfen würde</translation>
    </message>
    <message>
        <source>Nothing was recorded yet: what cannot be seen is known after the first recording.</source>
        <translation>Noch nichts aufgezeichnet: was nicht zu sehen ist, steht nach der ersten Aufzeichnung fest.</translation>
    </message>
    <message>
        <source>No recording of the last week was of a running machine.</source>
        <translation>Keine Aufzeichnung der letzten Woche zeigt eine Maschine in Betrieb.</translation>
    </message>
    <message>
        <source>This is how the machine was described from %1; it is shown, not edited.</source>
        <translation>So war die Maschine ab %1 beschrieben; wird gezeigt, nicht bearbeitet.</translation>
    </message>
    <message>
        <source>the beginning</source>
        <translation>Beginn</translation>
    </message>
    <message>
        <source>Nothing that is looked for is blind here.</source>
        <translation>Keiner der gesuchten Fehler liegt hier in einem blinden Fleck.</translation>
    </message>
    <message>
        <source>No machine is in the register yet.</source>
        <translation>Noch keine Maschine in den Stammdaten.</translation>
    </message>
    <message>
        <source>%1 in service</source>
        <translation>%1 im Einsatz</translation>
    </message>
    <message>
        <source>machine</source>
        <translation>Maschine</translation>
    </message>
    <message>
        <source>machines</source>
        <translation>Maschinen</translation>
    </message>
    <message>
        <source>New machine</source>
        <translation>Neue Maschine</translation>
    </message>
    <message>
        <source>Nameplate</source>
        <translation>Typenschild</translation>
    </message>
    <message>
        <source>Bearings</source>
        <translation>Lager</translation>
    </message>
    <message>
        <source>Train</source>
        <translation>Strang</translation>
    </message>
    <message>
        <source>Points</source>
        <translation>Messpunkte</translation>
    </message>
    <message>
        <source>Blind spots</source>
        <translation>Blinde Flecken</translation>
    </message>
    <message>
        <source>History</source>
        <translation>Historie</translation>
    </message>
    <message>
        <source>%1 (to mend)</source>
        <translation>%1 (zu berichtigen)</translation>
    </message>
    <message>
        <source>Known after the first recording.</source>
        <translation>Steht nach der ersten Aufzeichnung fest.</translation>
    </message>
    <message>
        <source>%1 is in the register already; a new machine needs another tag.</source>
        <translation>%1 steht schon in den Stammdaten; eine neue Maschine braucht ein anderes Kennzeichen.</translation>
    </message>
    <message>
        <source>%1 taken into the register</source>
        <translation>%1 in die Stammdaten aufgenommen</translation>
    </message>
    <message>
        <source>%1 saved</source>
        <translation>%1 gespeichert</translation>
    </message>
    <message>
        <source>%1 is unchanged</source>
        <translation>%1 ist unverändert</translation>
    </message>
    <message>
        <source>%1 is out of service; its past is kept</source>
        <translation>%1 ist stillgelegt; ihre Vergangenheit bleibt erhalten</translation>
    </message>
    <message>
        <source>Register</source>
        <translation>Stammdaten</translation>
    </message>
    <message>
        <source>The description was changed and not saved.</source>
        <translation>Die Beschreibung wurde geändert und nicht gespeichert.</translation>
    </message>
    <message>
        <source>Drop the changes</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>Stay here</source>
        <translation>Hier bleiben</translation>
    </message>
    <message>
        <source>%1 is taken out of service from today. Its recordings, rounds and descriptions stay in the fleet file.</source>
        <translation>%1 wird ab heute stillgelegt. Ihre Aufzeichnungen, Runden und Beschreibungen bleiben in der Flottendatei.</translation>
    </message>
    <message>
        <source>Take out of service</source>
        <translation>Stilllegen</translation>
    </message>
    <message>
        <source>taken out in the register</source>
        <translation>in den Stammdaten stillgelegt</translation>
    </message>
    <message>
        <source>Show on the machine page</source>
        <translation>Auf der Maschinenseite zeigen</translation>
    </message>
    <message>
        <source>This description is shown, not edited.</source>
        <translation>Diese Beschreibung wird gezeigt, nicht bearbeitet.</translation>
    </message>
    <message>
        <source>bearing</source>
        <translation>Lager</translation>
    </message>
    <message>
        <source>%1 is in the form; save keeps it</source>
        <translation>%1 steht im Formular; Speichern legt es ab</translation>
    </message>
    <message>
        <source>%1 added, %2 changed, %3 unchanged, %4 refused</source>
        <translation>%1 hinzugefügt, %2 geändert, %3 unverändert, %4 abgewiesen</translation>
    </message>
    <message>
        <source>Holds from</source>
        <translation>Gilt ab</translation>
    </message>
    <message>
        <source>Entered</source>
        <translation>Erfasst</translation>
    </message>
    <message>
        <source>Why</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>Return shows a description as it was; two chosen ones are compared below.</source>
        <translation>Die Eingabetaste zeigt eine Beschreibung, wie sie war; zwei gewählte werden unten verglichen.</translation>
    </message>
    <message>
        <source>Descriptions through time</source>
        <translation>Beschreibungen im Lauf der Zeit</translation>
    </message>
    <message>
        <source>Day</source>
        <translation>Tag</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Before</source>
        <translation>Vorher</translation>
    </message>
    <message>
        <source>After</source>
        <translation>Nachher</translation>
    </message>
    <message>
        <source>What changed</source>
        <translation>Was sich geändert hat</translation>
    </message>
    <message>
        <source>Register written to %1</source>
        <translation>Stammdaten nach %1 geschrieben</translation>
    </message>
    <message>
        <source>Register to import</source>
        <translation>Einzulesende Stammdaten</translation>
    </message>
    <message>
        <source>Registers (*.json *.csv *.tsv);;All files (*)</source>
        <translation>Stammdaten (*.json *.csv *.tsv);;Alle Dateien (*)</translation>
    </message>
    <message>
        <source>Write the register to</source>
        <translation>Stammdaten schreiben nach</translation>
    </message>
    <message>
        <source>JSON, with the history (*.json);;CSV, one row a machine (*.csv)</source>
        <translation>JSON, mit der Historie (*.json);;CSV, eine Zeile je Maschine (*.csv)</translation>
    </message>
</context>
<context>
    <name>fettle::RegisterSaveBar</name>
    <message>
        <source>the machine was changed on</source>
        <translation>Maschine wurde geändert am</translation>
    </message>
    <message>
        <source>Save</source>
        <translation>Speichern</translation>
    </message>
    <message>
        <source>Drop changes</source>
        <translation>Änderungen verwerfen</translation>
    </message>
    <message>
        <source>Valid from</source>
        <translation>Gültig ab</translation>
    </message>
    <message>
        <source>why it changed: new bearing, plate read again ...</source>
        <translation>warum geändert: neues Lager, Typenschild neu abgelesen ...</translation>
    </message>
    <message>
        <source>Why it changed</source>
        <translation>Grund der Änderung</translation>
    </message>
    <message>
        <source>Checked: what is described now holds from this day on, earlier recordings keep what held before. Not checked: a correction of what holds now.</source>
        <translation>Angekreuzt: was jetzt beschrieben ist, gilt ab diesem Tag; für frühere Aufzeichnungen bleibt, was vorher galt. Nicht angekreuzt: eine Berichtigung dessen, was jetzt gilt.</translation>
    </message>
    <message>
        <source>and %1 more</source>
        <translation>und %1 weitere</translation>
    </message>
</context>
<context>
    <name>fettle::RegisterTable</name>
    <message>
        <source>Add</source>
        <translation>Hinzufügen</translation>
    </message>
    <message>
        <source>Remove</source>
        <translation>Entfernen</translation>
    </message>
    <message>
        <source>Add to %1</source>
        <translation>Zu %1 hinzufügen</translation>
    </message>
    <message>
        <source>Remove from %1</source>
        <translation>Aus %1 entfernen</translation>
    </message>
</context>
<context>
    <name>fettle::RegisterTree</name>
    <message>
        <source>Find a machine</source>
        <translation>Maschine suchen</translation>
    </message>
    <message>
        <source>find: tag, service, area</source>
        <translation>suchen: Kennzeichen, Aufgabe, Bereich</translation>
    </message>
    <message>
        <source>Sites, areas and machines</source>
        <translation>Standorte, Bereiche und Maschinen</translation>
    </message>
    <message>
        <source>Out of service</source>
        <translation>Stillgelegt</translation>
    </message>
    <message>
        <source>no area</source>
        <translation>kein Bereich</translation>
    </message>
    <message>
        <source>taken out on %1</source>
        <translation>stillgelegt am %1</translation>
    </message>
</context>
<context>
    <name>fettle::ReportDialog</name>
    <message>
        <source>Round report</source>
        <translation>Rundenbericht</translation>
    </message>
    <message>
        <source>&amp;Save as PDF…</source>
        <translation>Als &amp;PDF speichern…</translation>
    </message>
    <message>
        <source>Vector pages, to read or to print</source>
        <translation>Vektorseiten, zum Lesen oder Drucken</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>On one of the system&apos;s printers</source>
        <translation>Auf einem der Drucker des Systems</translation>
    </message>
    <message>
        <source>&amp;CSV…</source>
        <translation>&amp;CSV…</translation>
    </message>
    <message>
        <source>The work in its order, a row for each machine</source>
        <translation>Die Arbeiten in ihrer Reihenfolge, eine Zeile je Maschine</translation>
    </message>
    <message>
        <source>&amp;JSON…</source>
        <translation>&amp;JSON…</translation>
    </message>
    <message>
        <source>All that stands in the report, for other programs</source>
        <translation>Alles, was im Bericht steht, für andere Programme</translation>
    </message>
    <message>
        <source>Save the round report</source>
        <translation>Rundenbericht speichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>CSV (*.csv)</source>
        <translation>CSV (*.csv)</translation>
    </message>
    <message>
        <source>JSON (*.json)</source>
        <translation>JSON (*.json)</translation>
    </message>
    <message>
        <source>The report is made: a sheet is drawn up for each machine with work…</source>
        <translation>Der Bericht wird erstellt: für jede Maschine mit Arbeit entsteht ein Blatt…</translation>
    </message>
</context>
<context>
    <name>fettle::ResonanceDialog</name>
    <message>
        <source>%1 orders and %2 channels agree</source>
        <translation>%1 Ordnungen und %2 Kanäle stimmen überein</translation>
    </message>
    <message>
        <source>%1 orders agree</source>
        <translation>%1 Ordnungen stimmen überein</translation>
    </message>
    <message>
        <source>%1 channels agree</source>
        <translation>%1 Kanäle stimmen überein</translation>
    </message>
    <message>
        <source>one order alone</source>
        <translation>nur eine Ordnung</translation>
    </message>
    <message>
        <source>Resonance map of %1</source>
        <translation>Resonanzkarte von %1</translation>
    </message>
    <message>
        <source>The stored spectra are gathered by speed…</source>
        <translation>Die abgelegten Spektren werden nach Drehzahl gesammelt…</translation>
    </message>
    <message>
        <source>Channel</source>
        <translation>Kanal</translation>
    </message>
    <message>
        <source>Whose spectra are shown; the table below looks at all</source>
        <translation>Wessen Spektren gezeigt werden; die Tabelle darunter betrachtet alle</translation>
    </message>
    <message>
        <source>Value of a speed</source>
        <translation>Wert einer Drehzahl</translation>
    </message>
    <message>
        <source>Of all recordings at a speed: the largest, or the median, line by line</source>
        <translation>Aus allen Aufzeichnungen bei einer Drehzahl: der größte Wert oder der Median, Linie für Linie</translation>
    </message>
    <message>
        <source>largest</source>
        <translation>größter</translation>
    </message>
    <message>
        <source>median</source>
        <translation>Median</translation>
    </message>
    <message>
        <source>Bands of speed to skip</source>
        <translation>Auszublendende Drehzahlbänder</translation>
    </message>
    <message>
        <source>r/min to skip</source>
        <translation>r/min auszublenden</translation>
    </message>
    <message>
        <source>order</source>
        <translation>Ordnung</translation>
    </message>
    <message>
        <source>meets, %1</source>
        <translation>trifft, %1</translation>
    </message>
    <message>
        <source>rises by, dB</source>
        <translation>Anstieg, dB</translation>
    </message>
    <message>
        <source>its level there, %1</source>
        <translation>Pegel dort, %1</translation>
    </message>
    <message>
        <source>recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>how sure</source>
        <translation>wie sicher</translation>
    </message>
    <message>
        <source>This machine runs on the mains at one speed: %1. A map needs a drive that changes speed.</source>
        <translation>Diese Maschine läuft am Netz mit einer einzigen Drehzahl: %1. Eine Karte braucht einen Antrieb mit veränderlicher Drehzahl.</translation>
    </message>
    <message>
        <source>No map yet: %1. Let the drive run at more speeds, recordings come in by themselves.</source>
        <translation>Noch keine Karte: %1. Den Antrieb mit mehr Drehzahlen fahren, Aufzeichnungen kommen von selbst.</translation>
    </message>
    <message>
        <source>%1 %2, %3 to %4</source>
        <translation>%1 %2, %3 bis %4</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>%1 x</source>
        <translation>%1 x</translation>
    </message>
    <message>
        <source>%1; small, hardly worth skipping</source>
        <translation>%1; klein, Ausblenden lohnt kaum</translation>
    </message>
    <message>
        <source>%1 recordings between %2 and %3 r/min, %4 to %5.</source>
        <translation>%1 Aufzeichnungen zwischen %2 und %3 r/min, %4 bis %5.</translation>
    </message>
    <message>
        <source>No order grows where it meets a fixed frequency.</source>
        <translation>Keine Ordnung wächst, wo sie auf eine feste Frequenz trifft.</translation>
    </message>
    <message>
        <source>%1 natural frequencies are met by an order; %2 bands of speed are worth skipping. A bump test at rest or a run-down decides; the drive&apos;s own skip bands are set by who answers for it.</source>
        <translation>%1 Eigenfrequenzen werden von einer Ordnung getroffen; %2 Drehzahlbänder lohnen das Ausblenden. Ein Anschlagversuch im Stillstand oder ein Auslauf entscheidet; die Ausblendbänder des Umrichters stellt ein, wer für ihn verantwortlich ist.</translation>
    </message>
    <message>
        <source>%1 %2 at %3 stays whatever the speed: mains or a neighbour, no resonance.</source>
        <translation>%1 %2 bei %3 bleibt, wie auch immer die Drehzahl ist: Netz oder Nachbar, keine Resonanz.</translation>
    </message>
</context>
<context>
    <name>fettle::ResonancePlot</name>
    <message>
        <source>Level by speed and frequency</source>
        <translation>Pegel über Drehzahl und Frequenz</translation>
    </message>
    <message>
        <source>orders</source>
        <translation>Ordnungen</translation>
    </message>
    <message>
        <source>Upright axis in orders of the shaft instead of frequency</source>
        <translation>Hochachse in Ordnungen der Welle statt in Frequenz</translation>
    </message>
    <message>
        <source>speed, r/min</source>
        <translation>Drehzahl, r/min</translation>
    </message>
    <message>
        <source>%1 r/min, never run</source>
        <translation>%1 r/min, nie gefahren</translation>
    </message>
    <message>
        <source>%1 r/min, %2, %3, %4 recordings</source>
        <translation>%1 r/min, %2, %3, %4 Aufzeichnungen</translation>
    </message>
    <message>
        <source>all</source>
        <translation>alle</translation>
    </message>
</context>
<context>
    <name>fettle::RetentionDialog</name>
    <message>
        <source>&amp;List what goes</source>
        <translation>&amp;Auflisten, was geht</translation>
    </message>
    <message>
        <source>&amp;Thin…</source>
        <translation>Aus&amp;dünnen…</translation>
    </message>
    <message>
        <source>&amp;Compact the file</source>
        <translation>Datei &amp;verdichten</translation>
    </message>
    <message>
        <source>&amp;Stop</source>
        <translation>An&amp;halten</translation>
    </message>
    <message>
        <source>Retention</source>
        <translation>Aufbewahrung</translation>
    </message>
    <message>
        <source>Stopping; what is done stays done.</source>
        <translation>Wird angehalten; was getan ist, bleibt getan.</translation>
    </message>
    <message>
        <source>Lists what the days above would take away; nothing is changed.</source>
        <translation>Listet auf, was mit den Tagen oben wegfiele; geändert wird nichts.</translation>
    </message>
    <message>
        <source>Keeps these days in the fleet file and takes away what is listed.</source>
        <translation>Merkt sich diese Tage in der Flottendatei und nimmt weg, was aufgelistet ist.</translation>
    </message>
    <message>
        <source>Writes the file anew without its free space. Needs twice its room on the disk for a while; others who have it open wait.</source>
        <translation>Schreibt die Datei neu, ohne ihren freien Platz. Braucht eine Zeit lang den doppelten Platz auf der Platte; wer sie sonst offen hat, wartet.</translation>
    </message>
    <message>
        <source>How far it is</source>
        <translation>Wie weit es ist</translation>
    </message>
    <message>
        <source>What</source>
        <translation>Was</translation>
    </message>
    <message>
        <source>Goes or stays, and why</source>
        <translation>Geht oder bleibt, und warum</translation>
    </message>
    <message>
        <source>Recordings</source>
        <translation>Aufzeichnungen</translation>
    </message>
    <message>
        <source>Size</source>
        <translation>Größe</translation>
    </message>
    <message>
        <source>What goes and what stays</source>
        <translation>Was geht und was bleibt</translation>
    </message>
    <message>
        <source>Days; counted back from the newest recording of each point.</source>
        <translation>Tage; zurückgezählt von der neuesten Aufzeichnung jeder Messstelle.</translation>
    </message>
    <message>
        <source>for ever</source>
        <translation>für immer</translation>
    </message>
    <message>
        <source> days</source>
        <translation> Tage</translation>
    </message>
    <message>
        <source>%1: every one for</source>
        <translation>%1: alle für</translation>
    </message>
    <message>
        <source>%1: then one a day for</source>
        <translation>%1: danach eine am Tag für</translation>
    </message>
    <message>
        <source>%1: then one a week for</source>
        <translation>%1: danach eine in der Woche für</translation>
    </message>
    <message>
        <source>all for</source>
        <translation>alle für</translation>
    </message>
    <message>
        <source>then one a day</source>
        <translation>danach eine am Tag</translation>
    </message>
    <message>
        <source>then one a week</source>
        <translation>danach eine in der Woche</translation>
    </message>
    <message>
        <source>The days were changed: list what goes before it is thinned.</source>
        <translation>Die Tage wurden geändert: vor dem Ausdünnen auflisten, was geht.</translation>
    </message>
    <message>
        <source>What goes is being listed.</source>
        <translation>Was geht, wird aufgelistet.</translation>
    </message>
    <message>
        <source>goes</source>
        <translation>geht</translation>
    </message>
    <message>
        <source>stays: %1</source>
        <translation>bleibt: %1</translation>
    </message>
    <message>
        <source>Nothing goes: all that is old is thinned already, or stands under something that needs it.</source>
        <translation>Nichts geht: was alt ist, ist schon ausgedünnt oder wird noch gebraucht.</translation>
    </message>
    <message>
        <source>%1 of waveforms, spectra and examinations would go. Recordings, trends and weights stay for ever.</source>
        <translation>%1 an Zeitsignalen, Spektren und Auswertungen fielen weg. Aufzeichnungen, Trends und Gewichte bleiben für immer.</translation>
    </message>
    <message>
        <source>Thin the fleet file</source>
        <translation>Flottendatei ausdünnen</translation>
    </message>
    <message>
        <source>What is listed is taken away and cannot be brought back. Keep a backup where it may be wanted again.</source>
        <translation>Was aufgelistet ist, wird weggenommen und lässt sich nicht zurückholen. Wo es noch einmal gebraucht werden könnte, vorher sichern.</translation>
    </message>
    <message>
        <source>Thin</source>
        <translation>Ausdünnen</translation>
    </message>
    <message>
        <source>The fleet file is being thinned.</source>
        <translation>Die Flottendatei wird ausgedünnt.</translation>
    </message>
    <message>
        <source>Stopped: %1 were taken away, the rest stays for the next time.</source>
        <translation>Angehalten: %1 wurden weggenommen, der Rest bleibt für das nächste Mal.</translation>
    </message>
    <message>
        <source>%1 were taken away.</source>
        <translation>%1 wurden weggenommen.</translation>
    </message>
    <message>
        <source>The file is being written anew.</source>
        <translation>Die Datei wird neu geschrieben.</translation>
    </message>
    <message>
        <source>The file is compacted.</source>
        <translation>Die Datei ist verdichtet.</translation>
    </message>
    <message>
        <source>Stopped; nothing is listed.</source>
        <translation>Angehalten; nichts ist aufgelistet.</translation>
    </message>
    <message>
        <source> day</source>
        <translation> Tag</translation>
    </message>
</context>
<context>
    <name>fettle::ReturnDialog</name>
    <message>
        <source>Planner&apos;s report: %1</source>
        <translation>Bericht des Planers: %1</translation>
    </message>
    <message>
        <source>Keep the report</source>
        <translation>Bericht ablegen</translation>
    </message>
    <message>
        <source>confirmed: as told</source>
        <translation>bestätigt: wie gemeldet</translation>
    </message>
    <message>
        <source>another fault was found</source>
        <translation>anderer Fehler gefunden</translation>
    </message>
    <message>
        <source>opened, nothing found</source>
        <translation>geöffnet, nichts gefunden</translation>
    </message>
    <message>
        <source>not opened</source>
        <translation>nicht geöffnet</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>Found</source>
        <translation>Gefunden</translation>
    </message>
    <message>
        <source>not said</source>
        <translation>keine Angabe</translation>
    </message>
    <message>
        <source>It showed as (ISO 14224 manner)</source>
        <translation>Zeigte sich als (Ausfallart nach ISO 14224)</translation>
    </message>
    <message>
        <source>It came from</source>
        <translation>Ursache</translation>
    </message>
    <message>
        <source>Bearing damage (ISO 15243)</source>
        <translation>Lagerschaden (ISO 15243)</translation>
    </message>
    <message>
        <source>kept</source>
        <translation>aufbewahrt</translation>
    </message>
    <message>
        <source>not kept</source>
        <translation>nicht aufbewahrt</translation>
    </message>
    <message>
        <source>tag of the old part</source>
        <translation>Kennzeichen des Altteils</translation>
    </message>
    <message>
        <source>before: offset, angle</source>
        <translation>vorher: Versatz, Winkel</translation>
    </message>
    <message>
        <source>after: offset, angle</source>
        <translation>nachher: Versatz, Winkel</translation>
    </message>
    <message>
        <source>Whether the old part was kept</source>
        <translation>Ob das Altteil aufbewahrt wurde</translation>
    </message>
    <message>
        <source>Tag of the old part</source>
        <translation>Kennzeichen des Altteils</translation>
    </message>
    <message>
        <source>Alignment before: offset and angle with their units</source>
        <translation>Ausrichtung vorher: Versatz und Winkel mit Einheiten</translation>
    </message>
    <message>
        <source>Alignment after: offset and angle with their units</source>
        <translation>Ausrichtung nachher: Versatz und Winkel mit Einheiten</translation>
    </message>
    <message>
        <source>Opened on</source>
        <translation>Geöffnet am</translation>
    </message>
    <message>
        <source>People x hours</source>
        <translation>Personen x Stunden</translation>
    </message>
    <message>
        <source>Old part</source>
        <translation>Altteil</translation>
    </message>
    <message>
        <source>Alignment</source>
        <translation>Ausrichtung</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <source>Photographs</source>
        <translation>Fotos</translation>
    </message>
    <message>
        <source>Say in words which other fault was found.</source>
        <translation>In Worten angeben, welcher andere Fehler gefunden wurde.</translation>
    </message>
</context>
<context>
    <name>fettle::RotorDrawing</name>
    <message>
        <source>Rotor with its angles</source>
        <translation>Rotor mit seinen Winkeln</translation>
    </message>
</context>
<context>
    <name>fettle::RoundBefore</name>
    <message>
        <source>%1 %2</source>
        <translation>%1 %2</translation>
    </message>
    <message>
        <source>unseen: %1</source>
        <translation>ungesehen: %1</translation>
    </message>
    <message>
        <source>What comes before the list</source>
        <translation>Was vor der Liste kommt</translation>
    </message>
    <message>
        <source>What comes before the list: jobs to verify, overdue, due again, late, unseen (B)</source>
        <translation>Was vor der Liste kommt: nachzuweisende Aufträge, überfällig, wieder fällig, spät, ungesehen (B)</translation>
    </message>
    <message>
        <source>What comes before the list, line by line</source>
        <translation>Was vor der Liste kommt, Zeile für Zeile</translation>
    </message>
    <message>
        <source>Return or a click goes there; Escape goes back to the list</source>
        <translation>Eingabetaste oder Klick führt dorthin; Esc führt zurück zur Liste</translation>
    </message>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
    <message>
        <source>unseen, %1 (%2): %3</source>
        <translation>ungesehen, %1 (%2): %3</translation>
    </message>
</context>
<context>
    <name>fettle::RoundDelegate</name>
    <message>
        <source>%1  (folded, G unfolds)</source>
        <translation>%1  (eingeklappt, G klappt aus)</translation>
    </message>
    <message>
        <source>of %1</source>
        <translation>von %1</translation>
    </message>
</context>
<context>
    <name>fettle::RoundFilters</name>
    <message>
        <source>Grouped</source>
        <translation>Gruppiert</translation>
    </message>
    <message>
        <source>What the ledger&apos;s groups are (V: the next)</source>
        <translation>Wonach die Liste gruppiert ist (V: das nächste)</translation>
    </message>
    <message>
        <source>Sorted</source>
        <translation>Sortiert</translation>
    </message>
    <message>
        <source>What the groups are sorted by (S: the next, Shift+S: the other way round)</source>
        <translation>Wonach die Gruppen sortiert sind (S: das nächste, Umschalt+S: umgekehrt)</translation>
    </message>
    <message>
        <source>Filter by urgency</source>
        <translation>Nach Dringlichkeit filtern</translation>
    </message>
    <message>
        <source>Show machines of one urgency</source>
        <translation>Maschinen einer Dringlichkeit zeigen</translation>
    </message>
    <message>
        <source>Filter by decision</source>
        <translation>Nach Entscheidung filtern</translation>
    </message>
    <message>
        <source>Show machines by what was decided; undecided: all that the round still asks</source>
        <translation>Maschinen nach Entscheidung zeigen; offen: alles, was die Runde noch fragt</translation>
    </message>
    <message>
        <source>Filter by area</source>
        <translation>Nach Bereich filtern</translation>
    </message>
    <message>
        <source>Show machines of one area</source>
        <translation>Maschinen eines Bereichs zeigen</translation>
    </message>
    <message>
        <source>Filter by text</source>
        <translation>Nach Text filtern</translation>
    </message>
    <message>
        <source>Show machines whose tag, asset number, service, area or finding has this text</source>
        <translation>Maschinen zeigen, deren Kennzeichen, Anlagennr., Aufgabe, Bereich oder Befund diesen Text enthält</translation>
    </message>
    <message>
        <source>filter: tag, service, finding</source>
        <translation>filtern: Kennzeichen, Aufgabe, Befund</translation>
    </message>
    <message>
        <source>every urgency</source>
        <translation>jede Dringlichkeit</translation>
    </message>
    <message>
        <source>every decision</source>
        <translation>jede Entscheidung</translation>
    </message>
    <message>
        <source>undecided</source>
        <translation>offen</translation>
    </message>
    <message>
        <source>accepted</source>
        <translation>angenommen</translation>
    </message>
    <message>
        <source>disputed</source>
        <translation>bestritten</translation>
    </message>
    <message>
        <source>put off</source>
        <translation>verschoben</translation>
    </message>
    <message>
        <source>all areas</source>
        <translation>alle Bereiche</translation>
    </message>
    <message>
        <source>%1, turned</source>
        <translation>%1, umgekehrt</translation>
    </message>
</context>
<context>
    <name>fettle::RoundHeading</name>
    <message>
        <source>Round</source>
        <translation>Runde</translation>
    </message>
    <message>
        <source>Round shown</source>
        <translation>Gezeigte Runde</translation>
    </message>
    <message>
        <source>All rounds that were kept, newest first</source>
        <translation>Alle abgelegten Runden, neueste zuerst</translation>
    </message>
    <message>
        <source>The round before (Ctrl+Page Up)</source>
        <translation>Vorige Runde (Strg+Bild auf)</translation>
    </message>
    <message>
        <source>The round after (Ctrl+Page Down)</source>
        <translation>Nächste Runde (Strg+Bild ab)</translation>
    </message>
</context>
<context>
    <name>fettle::RoundLedger</name>
    <message>
        <source>Machines of the round</source>
        <translation>Maschinen der Runde</translation>
    </message>
</context>
<context>
    <name>fettle::RoundPage</name>
    <message>
        <source>Take a machine into the register</source>
        <translation>Maschine in die Stammdaten aufnehmen</translation>
    </message>
    <message>
        <source>Import recordings…</source>
        <translation>Aufzeichnungen einlesen…</translation>
    </message>
    <message>
        <source>Open a round…</source>
        <translation>Runde öffnen…</translation>
    </message>
    <message>
        <source>Close the round…</source>
        <translation>Runde abschließen…</translation>
    </message>
    <message>
        <source>The round is being read.</source>
        <translation>Die Runde wird gelesen.</translation>
    </message>
    <message>
        <source>The register is empty. Take the machines in first, with their nameplates, bearings and measuring points; then import recordings; then open the first round.</source>
        <translation>Die Stammdaten sind leer. Zuerst die Maschinen mit Typenschildern, Lagern und Messpunkten aufnehmen; dann Aufzeichnungen einlesen; dann die erste Runde öffnen.</translation>
    </message>
    <message>
        <source>%1 machines are in the register, no recording yet. Import recordings, then open the first round.</source>
        <translation>%1 Maschinen stehen in den Stammdaten, noch keine Aufzeichnung. Aufzeichnungen einlesen, dann die erste Runde öffnen.</translation>
    </message>
    <message>
        <source>All machines to leave are accepted together, once each of the sample was opened</source>
        <translation>Alle Maschinen mit „belassen“ werden gemeinsam angenommen, sobald jede der Stichprobe geöffnet wurde</translation>
    </message>
    <message>
        <source>Taken back: %1.</source>
        <translation>Zurückgenommen: %1.</translation>
    </message>
    <message>
        <source>Nothing is undecided.</source>
        <translation>Nichts ist offen.</translation>
    </message>
</context>
<context>
    <name>fettle::RulesDialog</name>
    <message>
        <source>&amp;Remove</source>
        <translation>&amp;Entfernen</translation>
    </message>
    <message>
        <source>Rules for reading files</source>
        <translation>Regeln zum Lesen von Dateien</translation>
    </message>
    <message>
        <source>Files</source>
        <translation>Dateien</translation>
    </message>
    <message>
        <source>are taken for</source>
        <translation>gelten als</translation>
    </message>
    <message>
        <source>By</source>
        <translation>Von</translation>
    </message>
    <message>
        <source>No rule is kept. Rules are made where a file&apos;s facts are typed, before it comes in.</source>
        <translation>Keine Regel abgelegt. Regeln entstehen, wo die Angaben zu einer Datei vor dem Einlesen eingetippt werden.</translation>
    </message>
    <message>
        <source>They fill what neither a file nor its sidecar says; the one with more letters of its own comes first.</source>
        <translation>Sie ergänzen, was weder eine Datei noch ihre Begleitdatei angibt; die mit mehr eigenen Buchstaben geht vor.</translation>
    </message>
</context>
<context>
    <name>fettle::ScatterPlot</name>
    <message>
        <source>Scatter</source>
        <translation>Streudiagramm</translation>
    </message>
    <message>
        <source>%1 to %2</source>
        <translation>%1 bis %2</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1, %2 at %3</source>
        <translation>%1, %2 bei %3</translation>
    </message>
    <message>
        <source>all data</source>
        <translation>alle Daten</translation>
    </message>
    <message>
        <source>as shown</source>
        <translation>wie gezeigt</translation>
    </message>
</context>
<context>
    <name>fettle::SheetDialog</name>
    <message>
        <source>Findings sheet of %1</source>
        <translation>Befundblatt von %1</translation>
    </message>
    <message>
        <source>Finding</source>
        <translation>Befund</translation>
    </message>
    <message>
        <source>Which finding of the machine the sheet is for</source>
        <translation>Für welchen Befund der Maschine das Blatt ist</translation>
    </message>
    <message>
        <source>&amp;Save as PDF…</source>
        <translation>Als &amp;PDF speichern…</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>The sheet is made…</source>
        <translation>Das Blatt wird erstellt…</translation>
    </message>
    <message>
        <source>Save the findings sheet</source>
        <translation>Befundblatt speichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
</context>
<context>
    <name>fettle::SheetsDialog</name>
    <message>
        <source>%1, %2: %3</source>
        <translation>%1, %2: %3</translation>
    </message>
    <message>
        <source>asked for by a person</source>
        <translation>von einer Person verlangt</translation>
    </message>
    <message>
        <source>%1 (%2)</source>
        <translation>%1 (%2)</translation>
    </message>
    <message>
        <source>also a CSV, a row for each sheet, for a work-order system</source>
        <translation>auch eine CSV-Datei, eine Zeile je Blatt, für ein Arbeitsauftragssystem</translation>
    </message>
    <message>
        <source>Findings sheets of the round</source>
        <translation>Befundblätter der Runde</translation>
    </message>
    <message>
        <source>&amp;Browse…</source>
        <translation>&amp;Durchsuchen…</translation>
    </message>
    <message>
        <source>Machines to make a sheet for</source>
        <translation>Maschinen, für die ein Blatt erstellt wird</translation>
    </message>
    <message>
        <source>Space chooses or leaves out a machine</source>
        <translation>Leertaste wählt eine Maschine oder lässt sie aus</translation>
    </message>
    <message>
        <source>one PDF with all of them</source>
        <translation>ein PDF mit allen</translation>
    </message>
    <message>
        <source>a folder, a PDF for each</source>
        <translation>ein Ordner, ein PDF je Blatt</translation>
    </message>
    <message>
        <source>What is made</source>
        <translation>Was erstellt wird</translation>
    </message>
    <message>
        <source>Paper</source>
        <translation>Papier</translation>
    </message>
    <message>
        <source>A4</source>
        <translation>A4</translation>
    </message>
    <message>
        <source>Letter</source>
        <translation>Letter</translation>
    </message>
    <message>
        <source>Where to</source>
        <translation>Wohin</translation>
    </message>
    <message>
        <source>How far it is</source>
        <translation>Wie weit es ist</translation>
    </message>
    <message>
        <source>Make</source>
        <translation>Erstellen</translation>
    </message>
    <message>
        <source>&amp;Make the sheets</source>
        <translation>Blätter &amp;erstellen</translation>
    </message>
    <message>
        <source>S&amp;top</source>
        <translation>S&amp;topp</translation>
    </message>
    <message>
        <source>Choose &amp;all</source>
        <translation>&amp;Alle wählen</translation>
    </message>
    <message>
        <source>Choose &amp;none</source>
        <translation>&amp;Keine wählen</translation>
    </message>
    <message>
        <source>No machine of this round has a finding to put on a sheet.</source>
        <translation>Keine Maschine dieser Runde hat einen Befund für ein Blatt.</translation>
    </message>
    <message>
        <source>%1 of %2 chosen.</source>
        <translation>%1 von %2 gewählt.</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
    <message>
        <source>%1 made.</source>
        <translation>%1 erstellt.</translation>
    </message>
    <message>
        <source>sheet</source>
        <translation>Blatt</translation>
    </message>
    <message>
        <source>sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>%1
%2</source>
        <translation>%1
%2</translation>
    </message>
</context>
<context>
    <name>fettle::SheetsRun</name>
    <message>
        <source>Findings sheets, round to %1</source>
        <translation>Befundblätter, Runde bis %1</translation>
    </message>
    <message>
        <source>Stopped on request.</source>
        <translation>Auf Wunsch angehalten.</translation>
    </message>
    <message>
        <source>%1: %2</source>
        <translation>%1: %2</translation>
    </message>
</context>
<context>
    <name>fettle::ShortcutsDialog</name>
    <message>
        <source>In a plot</source>
        <translation>In einem Diagramm</translation>
    </message>
    <message>
        <source>Keys</source>
        <translation>Tasten</translation>
    </message>
</context>
<context>
    <name>fettle::SideSpectra</name>
    <message>
        <source>Twins and train below each other</source>
        <translation>Schwestermaschinen und Strang untereinander</translation>
    </message>
    <message>
        <source>Reading the spectra of %1 places …</source>
        <translation>Spektren von %1 Orten werden gelesen …</translation>
    </message>
    <message>
        <source>Fewer than two of the places have a waveform kept from which this spectrum can be drawn.</source>
        <translation>Weniger als zwei der Orte haben ein aufgehobenes Zeitsignal, aus dem dieses Spektrum gezeichnet werden kann.</translation>
    </message>
    <message>
        <source>The place looked at is on top; all lanes share one scale unless each has its own.</source>
        <translation>Der betrachtete Ort steht oben; alle Spuren haben eine Skala, wenn nicht jede ihre eigene hat.</translation>
    </message>
    <message>
        <source>Left out, without such a spectrum or with a waveform no longer kept: %1.</source>
        <translation>Ausgelassen, ohne solches Spektrum oder mit nicht mehr aufgehobenem Zeitsignal: %1.</translation>
    </message>
</context>
<context>
    <name>fettle::SpectrumPlot</name>
    <message>
        <source>orders of the shaft</source>
        <translation>Ordnungen der Welle</translation>
    </message>
    <message>
        <source>all %1 lines</source>
        <translation>alle %1 Linien</translation>
    </message>
    <message>
        <source>as shown: lines %1 to %2 of %3</source>
        <translation>wie gezeigt: Linien %1 bis %2 von %3</translation>
    </message>
    <message>
        <source>Shift and click sets B</source>
        <translation>Umschalt und Klick setzt B</translation>
    </message>
    <message>
        <source>B − A: %1</source>
        <translation>B − A: %1</translation>
    </message>
    <message>
        <source>%1; %2 dB</source>
        <translation>%1; %2 dB</translation>
    </message>
    <message>
        <source>%1; B / A %2 (%3 dB)</source>
        <translation>%1; B / A %2 (%3 dB)</translation>
    </message>
    <message>
        <source>%1, %2</source>
        <translation>%1, %2</translation>
    </message>
    <message>
        <source>%1: %2. %3</source>
        <translation>%1: %2. %3</translation>
    </message>
    <message>
        <source>Kind of cursor</source>
        <translation>Art des Cursors</translation>
    </message>
    <message>
        <source>Kind of cursor; Shift and click sets B, or the spacing of the sidebands</source>
        <translation>Art des Cursors; Umschalt und Klick setzt B oder den Abstand der Seitenbänder</translation>
    </message>
    <message>
        <source>one cursor</source>
        <translation>ein Cursor</translation>
    </message>
    <message>
        <source>two cursors</source>
        <translation>zwei Cursor</translation>
    </message>
    <message>
        <source>harmonics</source>
        <translation>Harmonische</translation>
    </message>
    <message>
        <source>sidebands</source>
        <translation>Seitenbänder</translation>
    </message>
    <message>
        <source>orders</source>
        <translation>Ordnungen</translation>
    </message>
    <message>
        <source>Frequency axis in orders of the shaft</source>
        <translation>Frequenzachse in Ordnungen der Welle</translation>
    </message>
    <message>
        <source>table</source>
        <translation>Tabelle</translation>
    </message>
    <message>
        <source>Table of the cursor&apos;s lines</source>
        <translation>Tabelle der Linien des Cursors</translation>
    </message>
    <message>
        <source>overlay</source>
        <translation>Auflage</translation>
    </message>
    <message>
        <source>What is laid over the spectrum: reference, sound band, bearing lines</source>
        <translation>Was über dem Spektrum liegt: Referenz, Gutband, Lagerlinien</translation>
    </message>
    <message>
        <source>How the amplitude is read, and its scale</source>
        <translation>Wie die Amplitude abgelesen wird, und ihre Skala</translation>
    </message>
    <message>
        <source>r.m.s.</source>
        <translation>eff.</translation>
    </message>
    <message>
        <source>peak</source>
        <translation>Spitze</translation>
    </message>
    <message>
        <source>peak to peak</source>
        <translation>Spitze-Spitze</translation>
    </message>
    <message>
        <source>density (mean square per Hz)</source>
        <translation>Dichte (mittleres Quadrat je Hz)</translation>
    </message>
    <message>
        <source>linear</source>
        <translation>linear</translation>
    </message>
    <message>
        <source>logarithmic</source>
        <translation>logarithmisch</translation>
    </message>
    <message>
        <source>decibels</source>
        <translation>Dezibel</translation>
    </message>
    <message>
        <source>p-p</source>
        <translation>S-S</translation>
    </message>
    <message>
        <source>PSD</source>
        <translation>PSD</translation>
    </message>
    <message>
        <source>log</source>
        <translation>log</translation>
    </message>
    <message>
        <source>dB</source>
        <translation>dB</translation>
    </message>
    <message>
        <source>%1, drawn at this speed</source>
        <translation>%1, auf diese Drehzahl gezeichnet</translation>
    </message>
</context>
<context>
    <name>fettle::SpectrumReading</name>
    <message>
        <source>dB re 1 %1</source>
        <translation>dB re 1 %1</translation>
    </message>
</context>
<context>
    <name>fettle::StartPage</name>
    <message>
        <source>&lt;p&gt;&lt;b&gt;What to do first&lt;/b&gt;&lt;/p&gt;&lt;ol&gt;&lt;li&gt;Make a fleet file: one SQLite file of one site. Everything is kept in it.&lt;/li&gt;&lt;li&gt;Take the machines into the register: nameplate, bearings, what is driven, and where the sensors sit. The more of it is known, the more can be judged; what cannot be seen is listed.&lt;/li&gt;&lt;li&gt;Import recordings: WAV, FLAC, CSV, UFF, MAT or HDF5 with a JSON file beside each. Drop a folder onto the window.&lt;/li&gt;&lt;li&gt;Open the first round: all machines, in the order in which somebody should look.&lt;/li&gt;&lt;/ol&gt;</source>
        <translation>&lt;p&gt;&lt;b&gt;Was zuerst zu tun ist&lt;/b&gt;&lt;/p&gt;&lt;ol&gt;&lt;li&gt;Flottendatei anlegen: eine SQLite-Datei je Standort. Alles wird darin abgelegt.&lt;/li&gt;&lt;li&gt;Maschinen in die Stammdaten aufnehmen: Typenschild, Lager, was angetrieben wird und wo die Sensoren sitzen. Je mehr davon bekannt ist, desto mehr lässt sich beurteilen; was nicht zu sehen ist, wird aufgeführt.&lt;/li&gt;&lt;li&gt;Aufzeichnungen einlesen: WAV, FLAC, CSV, UFF, MAT oder HDF5, jede mit einer JSON-Datei daneben. Einen Ordner auf das Fenster ziehen.&lt;/li&gt;&lt;li&gt;Erste Runde öffnen: alle Maschinen, in der Reihenfolge, in der jemand nachsehen sollte.&lt;/li&gt;&lt;/ol&gt;</translation>
    </message>
    <message>
        <source>Fettle</source>
        <translation>Fettle</translation>
    </message>
    <message>
        <source>Opened lately</source>
        <translation>Zuletzt geöffnet</translation>
    </message>
    <message>
        <source>Open a fleet…</source>
        <translation>Flotte öffnen…</translation>
    </message>
    <message>
        <source>New fleet…</source>
        <translation>Neue Flotte…</translation>
    </message>
</context>
<context>
    <name>fettle::StartRoundDialog</name>
    <message>
        <source>Open a round</source>
        <translation>Runde öffnen</translation>
    </message>
    <message>
        <source>Open the round</source>
        <translation>Runde öffnen</translation>
    </message>
    <message>
        <source>The round takes the seven days up to and with this day, in the site&apos;s calendar. The list is drawn up once and then kept as it is; recordings that come later open lines in the next one.</source>
        <translation>Die Runde umfasst die sieben Tage bis einschließlich diesem Tag, im Kalender des Standorts. Die Liste wird einmal aufgestellt und bleibt dann, wie sie ist; später eintreffende Aufzeichnungen eröffnen Zeilen in der nächsten.</translation>
    </message>
    <message>
        <source>Up to and with</source>
        <translation>Bis einschließlich</translation>
    </message>
</context>
<context>
    <name>fettle::SuggestionList</name>
    <message>
        <source>By hand at %1: %2</source>
        <translation>Von Hand an %1: %2</translation>
    </message>
    <message>
        <source>The node at %1: %2</source>
        <translation>Der Knoten an %1: %2</translation>
    </message>
    <message>
        <source>Recordings that would settle it</source>
        <translation>Aufzeichnungen, die es klären würden</translation>
    </message>
    <message>
        <source>%1 — %2</source>
        <translation>%1 — %2</translation>
    </message>
    <message>
        <source>asked</source>
        <translation>angefordert</translation>
    </message>
    <message>
        <source>Ask</source>
        <translation>Anfordern</translation>
    </message>
    <message>
        <source>Ask for: %1</source>
        <translation>Anfordern: %1</translation>
    </message>
    <message>
        <source>It stands on the list of what is asked for.</source>
        <translation>Steht auf der Liste des Angeforderten.</translation>
    </message>
    <message>
        <source>Puts it on the list of what is asked for.</source>
        <translation>Setzt es auf die Liste des Angeforderten.</translation>
    </message>
</context>
<context>
    <name>fettle::TrainLine</name>
    <message>
        <source>chosen</source>
        <translation>gewählt</translation>
    </message>
    <message>
        <source>Train from driver to driven machine</source>
        <translation>Strang vom Antrieb zur Arbeitsmaschine</translation>
    </message>
</context>
<context>
    <name>fettle::TrendPlot</name>
    <message>
        <source>Trend</source>
        <translation>Trend</translation>
    </message>
    <message>
        <source>time of %1</source>
        <translation>Zeit von %1</translation>
    </message>
    <message>
        <source>%1: %2
%3</source>
        <translation>%1: %2
%3</translation>
    </message>
    <message>
        <source>%1, %2%3</source>
        <translation>%1, %2%3</translation>
    </message>
    <message>
        <source>, not running</source>
        <translation>, nicht in Betrieb</translation>
    </message>
    <message>
        <source>all data</source>
        <translation>alle Daten</translation>
    </message>
    <message>
        <source>as shown</source>
        <translation>wie gezeigt</translation>
    </message>
</context>
<context>
    <name>fettle::TrialChangeDialog</name>
    <message>
        <source>The change is made</source>
        <translation>Die Änderung ist vorgenommen</translation>
    </message>
    <message>
        <source>Keep</source>
        <translation>Ablegen</translation>
    </message>
    <message>
        <source>Recordings before the machine was stopped stand for before, those from the moment it turned again for after; what lies between counts for neither. Times of %1.</source>
        <translation>Aufzeichnungen vor dem Abstellen der Maschine gelten als vorher, die ab dem Wiederanlauf als nachher; was dazwischen liegt, zählt für keines. Zeiten von %1.</translation>
    </message>
    <message>
        <source>Stopped and isolated at</source>
        <translation>Abgestellt und freigeschaltet um</translation>
    </message>
    <message>
        <source>Turning again, guards fitted, at</source>
        <translation>Wieder angelaufen, Schutzvorrichtungen angebracht, um</translation>
    </message>
    <message>
        <source>The machine cannot turn again before it was stopped.</source>
        <translation>Die Maschine kann nicht wieder laufen, bevor sie abgestellt wurde.</translation>
    </message>
</context>
<context>
    <name>fettle::TrialCloseDialog</name>
    <message>
        <source>Close the trial</source>
        <translation>Versuch abschließen</translation>
    </message>
    <message>
        <source>%1

The result is kept as it is now and never changes. Before the machine goes back to its work the change is taken out again, checked, and noted as an event.</source>
        <translation>%1

Das Ergebnis wird abgelegt, wie es jetzt ist, und ändert sich nie. Bevor die Maschine wieder an ihre Arbeit geht, wird die Änderung rückgängig gemacht, geprüft und als Ereignis notiert.</translation>
    </message>
    <message>
        <source>Recordings count up to</source>
        <translation>Aufzeichnungen zählen bis</translation>
    </message>
    <message>
        <source>Remarks: how it was taken out, what was seen</source>
        <translation>Bemerkungen: wie rückgängig gemacht, was zu sehen war</translation>
    </message>
</context>
<context>
    <name>fettle::TrialDialog</name>
    <message>
        <source>Seeded-fault trials of %1</source>
        <translation>Versuche mit eingebrachtem Fehler an %1</translation>
    </message>
    <message>
        <source>Trials of this machine</source>
        <translation>Versuche dieser Maschine</translation>
    </message>
    <message>
        <source>&amp;New trial</source>
        <translation>&amp;Neuer Versuch</translation>
    </message>
    <message>
        <source>Plan another trial of this machine</source>
        <translation>Einen weiteren Versuch an dieser Maschine planen</translation>
    </message>
    <message>
        <source>%1
%2</source>
        <translation>%1
%2</translation>
    </message>
    <message>
        <source>The recordings are read…</source>
        <translation>Die Aufzeichnungen werden gelesen…</translation>
    </message>
    <message>
        <source>The promise is frozen.</source>
        <translation>Die Zusage ist eingefroren.</translation>
    </message>
    <message>
        <source>The plan is kept.</source>
        <translation>Der Plan ist abgelegt.</translation>
    </message>
    <message>
        <source>The change is noted.</source>
        <translation>Die Änderung ist notiert.</translation>
    </message>
    <message>
        <source>The trial is closed and kept.</source>
        <translation>Der Versuch ist abgeschlossen und abgelegt.</translation>
    </message>
</context>
<context>
    <name>fettle::TrialForm</name>
    <message>
        <source>&amp;Keep as a plan</source>
        <translation>Als &amp;Plan ablegen</translation>
    </message>
    <message>
        <source>Keeps what is typed; nothing is promised yet</source>
        <translation>Legt das Eingetippte ab; noch ist nichts zugesagt</translation>
    </message>
    <message>
        <source>&amp;Start the trial: freeze the promise</source>
        <translation>Versuch &amp;starten: Zusage einfrieren</translation>
    </message>
    <message>
        <source>From then on neither the change nor the promise can be altered</source>
        <translation>Ab dann lassen sich weder Änderung noch Zusage ändern</translation>
    </message>
    <message>
        <source>not given</source>
        <translation>keine Angabe</translation>
    </message>
    <message>
        <source>Name</source>
        <translation>Name</translation>
    </message>
    <message>
        <source>What this trial is called in lists and on its sheet</source>
        <translation>Wie dieser Versuch in Listen und auf seinem Blatt heißt</translation>
    </message>
    <message>
        <source>What is changed</source>
        <translation>Was geändert wird</translation>
    </message>
    <message>
        <source>Kind of change made on purpose</source>
        <translation>Art der absichtlichen Änderung</translation>
    </message>
    <message>
        <source>Where</source>
        <translation>Wo</translation>
    </message>
    <message>
        <source>Place on the machine</source>
        <translation>Ort an der Maschine</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
    <message>
        <source>As somebody else would have to make it again</source>
        <translation>So, dass andere sie gleich wiederholen könnten</translation>
    </message>
    <message>
        <source>Damaged element</source>
        <translation>Geschädigtes Element</translation>
    </message>
    <message>
        <source>Of the bearing at this place</source>
        <translation>Des Lagers an diesem Ort</translation>
    </message>
    <message>
        <source>Followed is</source>
        <translation>Verfolgt wird</translation>
    </message>
    <message>
        <source>What is watched recording by recording</source>
        <translation>Was Aufzeichnung für Aufzeichnung beobachtet wird</translation>
    </message>
    <message>
        <source>Channel followed</source>
        <translation>Verfolgter Kanal</translation>
    </message>
    <message>
        <source>Where 1x is read; 1x in brackets is the median of the span before</source>
        <translation>Wo 1x gelesen wird; in Klammern der Median von 1x in der Zeit davor</translation>
    </message>
    <message>
        <source>g</source>
        <translation>g</translation>
    </message>
    <message>
        <source>mm</source>
        <translation>mm</translation>
    </message>
    <message>
        <source>kg</source>
        <translation>kg</translation>
    </message>
    <message>
        <source>degrees</source>
        <translation>Grad</translation>
    </message>
    <message>
        <source>not known</source>
        <translation>nicht bekannt</translation>
    </message>
    <message>
        <source>Mass</source>
        <translation>Masse</translation>
    </message>
    <message>
        <source>Of everything that is added, in g</source>
        <translation>Von allem, was angebracht wird, in g</translation>
    </message>
    <message>
        <source>Radius</source>
        <translation>Radius</translation>
    </message>
    <message>
        <source>From the shaft&apos;s centre to the mass, in mm</source>
        <translation>Von der Wellenmitte bis zur Masse, in mm</translation>
    </message>
    <message>
        <source>Rotor&apos;s mass</source>
        <translation>Rotormasse</translation>
    </message>
    <message>
        <source>In kg; without it neither grade nor range can be said</source>
        <translation>In kg; ohne sie sind weder Gütestufe noch Bereich angebbar</translation>
    </message>
    <message>
        <source>Grade asked</source>
        <translation>Geforderte Gütestufe</translation>
    </message>
    <message>
        <source>Balance quality grade of ISO 21940-11, in mm/s</source>
        <translation>Auswucht-Gütestufe nach ISO 21940-11, in mm/s</translation>
    </message>
    <message>
        <source>From the heavy spot</source>
        <translation>Zur schweren Stelle</translation>
    </message>
    <message>
        <source>Angle between the mass and the rotor&apos;s own unbalance; 0 degrees adds to it</source>
        <translation>Winkel zwischen der Masse und der eigenen Unwucht des Rotors; 0 Grad addiert sich dazu</translation>
    </message>
    <message>
        <source> decibans</source>
        <translation> Deziban</translation>
    </message>
    <message>
        <source> recordings</source>
        <translation> Aufzeichnungen</translation>
    </message>
    <message>
        <source>as in: 7.1 mm/s r.m.s. or 80 °C at the DE bearing</source>
        <translation>etwa: 7,1 mm/s eff. oder 80 °C am DE-Lager</translation>
    </message>
    <message>
        <source>Weight promised</source>
        <translation>Zugesagtes Gewicht</translation>
    </message>
    <message>
        <source>Reached by 3 of 5 running recordings, in decibans</source>
        <translation>Erreicht von 3 aus 5 Aufzeichnungen in Betrieb, in Deziban</translation>
    </message>
    <message>
        <source>Within</source>
        <translation>Binnen</translation>
    </message>
    <message>
        <source>Running recordings after the change</source>
        <translation>Aufzeichnungen in Betrieb nach der Änderung</translation>
    </message>
    <message>
        <source>Before, from</source>
        <translation>Vorher, ab</translation>
    </message>
    <message>
        <source>Recordings from then on stand for the time before</source>
        <translation>Aufzeichnungen ab dann stehen für die Zeit davor</translation>
    </message>
    <message>
        <source>Stopped at once at</source>
        <translation>Sofortabbruch bei</translation>
    </message>
    <message>
        <source>The value that ends the trial at once</source>
        <translation>Wert, der den Versuch sofort beendet</translation>
    </message>
    <message>
        <source>Who answers for it</source>
        <translation>Verantwortlich</translation>
    </message>
    <message>
        <source>A person of the site</source>
        <translation>Eine Person vom Standort</translation>
    </message>
    <message>
        <source>Permit</source>
        <translation>Freigabe</translation>
    </message>
    <message>
        <source>Number of the permit to work; may be empty</source>
        <translation>Nummer der Arbeitsfreigabe; darf leer bleiben</translation>
    </message>
    <message>
        <source>What it has to do</source>
        <translation>Was zu bewirken ist</translation>
    </message>
    <message>
        <source>What is promised</source>
        <translation>Was zugesagt wird</translation>
    </message>
    <message>
        <source>Before it is started, each of these is confirmed</source>
        <translation>Vor dem Start wird jeder dieser Punkte bestätigt</translation>
    </message>
    <message>
        <source>%1 %2, %3</source>
        <translation>%1 %2, %3</translation>
    </message>
    <message>
        <source>%1 (1x %2 %3)</source>
        <translation>%1 (1x %2 %3)</translation>
    </message>
    <message>
        <source>Nothing can be promised yet: %1.</source>
        <translation>Noch keine Zusage möglich: %1.</translation>
    </message>
    <message>
        <source>This fleet file is open for reading only.</source>
        <translation>Diese Flottendatei ist nur zum Lesen geöffnet.</translation>
    </message>
    <message>
        <source>Before it can be started: %1.</source>
        <translation>Vor dem Start: %1.</translation>
    </message>
    <message>
        <source>The round has this machine at act already: settle that before anything is changed on purpose.</source>
        <translation>Die Runde hat diese Maschine schon auf Handeln: das klären, bevor absichtlich etwas geändert wird.</translation>
    </message>
    <message>
        <source>This machine vibrates in zone D already, where damage is to be expected: a trial adds to it.</source>
        <translation>Diese Maschine schwingt schon in Zone D, wo Schäden zu erwarten sind: Ein Versuch kommt noch dazu.</translation>
    </message>
</context>
<context>
    <name>fettle::TrialSheetDialog</name>
    <message>
        <source>Trial sheet</source>
        <translation>Versuchsblatt</translation>
    </message>
    <message>
        <source>&amp;Save as PDF…</source>
        <translation>Als &amp;PDF speichern…</translation>
    </message>
    <message>
        <source>&amp;Print…</source>
        <translation>&amp;Drucken…</translation>
    </message>
    <message>
        <source>The sheet is made…</source>
        <translation>Das Blatt wird erstellt…</translation>
    </message>
    <message>
        <source>Trial sheet of %1</source>
        <translation>Versuchsblatt %1</translation>
    </message>
    <message>
        <source>Save the trial sheet</source>
        <translation>Versuchsblatt speichern</translation>
    </message>
    <message>
        <source>PDF (*.pdf)</source>
        <translation>PDF (*.pdf)</translation>
    </message>
</context>
<context>
    <name>fettle::TrialView</name>
    <message>
        <source>Recording by recording</source>
        <translation>Aufzeichnung für Aufzeichnung</translation>
    </message>
    <message>
        <source>What was promised and what came</source>
        <translation>Was zugesagt war und was kam</translation>
    </message>
    <message>
        <source>promise</source>
        <translation>Zusage</translation>
    </message>
    <message>
        <source>promised</source>
        <translation>zugesagt</translation>
    </message>
    <message>
        <source>found</source>
        <translation>gefunden</translation>
    </message>
    <message>
        <source>so far</source>
        <translation>bisher</translation>
    </message>
    <message>
        <source>The &amp;change is made…</source>
        <translation>Änderung &amp;vorgenommen…</translation>
    </message>
    <message>
        <source>C&amp;lose the trial…</source>
        <translation>Versuch ab&amp;schließen…</translation>
    </message>
    <message>
        <source>Trial &amp;sheet…</source>
        <translation>Versuchs&amp;blatt…</translation>
    </message>
    <message>
        <source>Tell when the machine was stopped and when it turned again</source>
        <translation>Angeben, wann die Maschine angehalten wurde und wann sie wieder lief</translation>
    </message>
    <message>
        <source>Keeps the result as it is then; a closed trial never changes</source>
        <translation>Hält das Ergebnis im jetzigen Stand fest; ein abgeschlossener Versuch ändert sich nie mehr</translation>
    </message>
    <message>
        <source>The trial on paper</source>
        <translation>Der Versuch auf Papier</translation>
    </message>
    <message>
        <source>promise frozen on %1 by %2</source>
        <translation>Zusage eingefroren am %1 von %2</translation>
    </message>
    <message>
        <source>changed on %1</source>
        <translation>geändert am %1</translation>
    </message>
    <message>
        <source>closed on %1</source>
        <translation>abgeschlossen am %1</translation>
    </message>
    <message>
        <source>%1 recordings before, %2 after</source>
        <translation>%1 Aufzeichnungen vorher, %2 nachher</translation>
    </message>
    <message>
        <source>stopped at once at %1</source>
        <translation>Sofortabbruch bei %1</translation>
    </message>
    <message>
        <source>%1, trial %2</source>
        <translation>%1, Versuch %2</translation>
    </message>
    <message>
        <source>No running recording of the spans has come in yet: import recordings.</source>
        <translation>Aus den Zeiträumen ist noch keine Aufzeichnung in Betrieb eingegangen: Aufzeichnungen einlesen.</translation>
    </message>
</context>
<context>
    <name>fettle::UnseenDialog</name>
    <message>
        <source>Unseen: %1</source>
        <translation>Ungesehen: %1</translation>
    </message>
    <message>
        <source>Unseen: %1 machines</source>
        <translation>Ungesehen: %1 Maschinen</translation>
    </message>
    <message>
        <source>Give this reason</source>
        <translation>Diesen Grund angeben</translation>
    </message>
    <message>
        <source>%1 could not be judged: %2. A silent node is its owner&apos;s matter, an idle machine production&apos;s; either way the round says why.</source>
        <translation>%1 nicht beurteilbar: %2. Ein stummer Knoten ist Sache seines Besitzers, eine Maschine außer Betrieb Sache der Produktion; in jedem Fall nennt die Runde den Grund.</translation>
    </message>
    <message>
        <source>Reason</source>
        <translation>Grund</translation>
    </message>
    <message>
        <source>In words</source>
        <translation>In Worten</translation>
    </message>
</context>
<context>
    <name>fettle::Walker</name>
    <message>
        <source>Box or stand %1</source>
        <translation>Gehäuse oder Bock %1</translation>
    </message>
    <message>
        <source>motor</source>
        <translation>Motor</translation>
    </message>
    <message>
        <source>%1 kW</source>
        <translation>%1 kW</translation>
    </message>
    <message>
        <source>Driver: motor</source>
        <translation>Antrieb: Motor</translation>
    </message>
    <message>
        <source>Coupling: %1</source>
        <translation>Kupplung: %1</translation>
    </message>
    <message>
        <source>driven</source>
        <translation>Arbeitsm.</translation>
    </message>
    <message>
        <source>Driven machine: %1</source>
        <translation>Arbeitsmaschine: %1</translation>
    </message>
    <message>
        <source>Gear %1</source>
        <translation>Zahnradpaar %1</translation>
    </message>
    <message>
        <source>Gear %1, %2 and %3 teeth</source>
        <translation>Zahnradpaar %1, %2 und %3 Zähne</translation>
    </message>
    <message>
        <source>Belt %1</source>
        <translation>Riemen %1</translation>
    </message>
    <message>
        <source>Belt %1, pulleys of %2 and %3 mm</source>
        <translation>Riemen %1, Scheiben von %2 und %3 mm</translation>
    </message>
    <message>
        <source>Bearing at %1, not described</source>
        <translation>Lager an %1, nicht beschrieben</translation>
    </message>
    <message>
        <source>Bearing at %1: %2</source>
        <translation>Lager an %1: %2</translation>
    </message>
    <message>
        <source>Measuring point %1 at %2</source>
        <translation>Messpunkt %1 an %2</translation>
    </message>
</context>
<context>
    <name>fettle::Waterfall</name>
    <message>
        <source>Waterfall</source>
        <translation>Wasserfall</translation>
    </message>
    <message>
        <source>%1, nothing recorded</source>
        <translation>%1, nichts aufgezeichnet</translation>
    </message>
    <message>
        <source>%1, %2, %3</source>
        <translation>%1, %2, %3</translation>
    </message>
</context>
<context>
    <name>fettle::WaterfallLook</name>
    <message>
        <source>times the floor</source>
        <translation>Vielfaches des Grundrauschens</translation>
    </message>
    <message>
        <source>dB re 1 %1</source>
        <translation>dB re 1 %1</translation>
    </message>
    <message>
        <source>orders</source>
        <translation>Ordnungen</translation>
    </message>
</context>
<context>
    <name>fettle::WaveformPlot</name>
    <message>
        <source>Waveform</source>
        <translation>Zeitsignal</translation>
    </message>
    <message>
        <source>s</source>
        <translation>s</translation>
    </message>
    <message>
        <source>turns</source>
        <translation>Umdrehungen</translation>
    </message>
    <message>
        <source>Ticks once a turn of the shaft, counted from the first mark</source>
        <translation>Teilstriche je Umdrehung der Welle, gezählt ab der ersten Marke</translation>
    </message>
    <message>
        <source>impacts</source>
        <translation>Stöße</translation>
    </message>
    <message>
        <source>Ticks once an impact of the chosen fault, counted from the first mark</source>
        <translation>Teilstriche je Stoß des gewählten Fehlers, gezählt ab der ersten Marke</translation>
    </message>
    <message>
        <source>zoom to marks</source>
        <translation>auf Marken zoomen</translation>
    </message>
    <message>
        <source>Shows what lies between the two marks (Z); Shift and click sets the second</source>
        <translation>Zeigt, was zwischen den beiden Marken liegt (Z); Umschalt und Klick setzt die zweite</translation>
    </message>
    <message>
        <source>Visible %1 to %2 s, mean taken out: r.m.s. %3, peak %4, crest factor %5, kurtosis %6</source>
        <translation>Sichtbar %1 bis %2 s, ohne Mittelwert: Effektivwert %3, Spitze %4, Scheitelfaktor %5, Kurtosis %6</translation>
    </message>
    <message>
        <source>Set two marks first: click, then Shift and click.</source>
        <translation>Zuerst zwei Marken setzen: Klick, dann Umschalt und Klick.</translation>
    </message>
    <message>
        <source>%1 s, %2</source>
        <translation>%1 s, %2</translation>
    </message>
    <message>
        <source>%1 s apart: %2</source>
        <translation>%1 s Abstand: %2</translation>
    </message>
    <message>
        <source>all %1 samples</source>
        <translation>alle %1 Abtastwerte</translation>
    </message>
    <message>
        <source>as shown: samples %1 to %2 of %3</source>
        <translation>wie gezeigt: Abtastwerte %1 bis %2 von %3</translation>
    </message>
</context>
<context>
    <name>fettle::WeightChart</name>
    <message>
        <source>Weight over the weeks: none</source>
        <translation>Gewicht über die Wochen: keins</translation>
    </message>
    <message>
        <source>Weight over the weeks, chosen recording: %1</source>
        <translation>Gewicht über die Wochen, gewählte Aufzeichnung: %1</translation>
    </message>
    <message>
        <source>Weight over the weeks: %1 recordings, the last %2 decibans</source>
        <translation>Gewicht über die Wochen: %1 Aufzeichnungen, die letzte %2 Deziban</translation>
    </message>
    <message>
        <source>%1: %2 decibans</source>
        <translation>%1: %2 Deziban</translation>
    </message>
    <message>
        <source>%1. Click for this recording, Ctrl and click for the week that ends here.</source>
        <translation>%1. Klick: diese Aufzeichnung, Strg und Klick: die Woche, die hier endet.</translation>
    </message>
    <message>
        <source>One stroke a recording, decibans; dashed: what a finding needs</source>
        <translation>Ein Strich je Aufzeichnung, Deziban; gestrichelt: was ein Befund braucht</translation>
    </message>
    <message>
        <source>no weight was kept for this fault</source>
        <translation>für diesen Fehler wurde kein Gewicht aufbewahrt</translation>
    </message>
</context>
<context>
    <name>fettle::Workplace</name>
    <message>
        <source>%1 %2 of %3</source>
        <translation>%1 %2 von %3</translation>
    </message>
    <message>
        <source>recordings come in</source>
        <translation>Aufzeichnungen gehen ein</translation>
    </message>
    <message>
        <source>%1 recordings taken in</source>
        <translation>%1 Aufzeichnungen eingelesen</translation>
    </message>
    <message>
        <source>This fleet file is open for reading only.</source>
        <translation>Diese Flottendatei ist nur zum Lesen geöffnet.</translation>
    </message>
    <message>
        <source>A round is open; it is closed before the next one.</source>
        <translation>Eine Runde ist offen; sie wird vor der nächsten abgeschlossen.</translation>
    </message>
    <message>
        <source>the round is drawn up</source>
        <translation>die Runde wird aufgestellt</translation>
    </message>
    <message>
        <source>Something else is running; try again when it is done.</source>
        <translation>Etwas anderes läuft noch; danach erneut versuchen.</translation>
    </message>
    <message>
        <source>No round is open.</source>
        <translation>Keine Runde ist offen.</translation>
    </message>
    <message>
        <source>The round is closed and kept.</source>
        <translation>Die Runde ist abgeschlossen und aufbewahrt.</translation>
    </message>
    <message>
        <source>Choose a machine first: a sheet belongs to one.</source>
        <translation>Zuerst eine Maschine wählen: ein Blatt gehört zu einer.</translation>
    </message>
    <message>
        <source>The sheet was saved as %1</source>
        <translation>Das Blatt wurde gespeichert als %1</translation>
    </message>
    <message>
        <source>Backed up to %1</source>
        <translation>Gesichert nach %1</translation>
    </message>
    <message>
        <source>There is no round to report on yet.</source>
        <translation>Noch keine Runde, über die zu berichten wäre.</translation>
    </message>
    <message>
        <source>The report was saved as %1</source>
        <translation>Der Bericht wurde gespeichert als %1</translation>
    </message>
    <message>
        <source>The comparison was saved as %1</source>
        <translation>Der Vergleich wurde gespeichert als %1</translation>
    </message>
    <message>
        <source>There is no round to make sheets of yet.</source>
        <translation>Noch keine Runde, aus der Blätter zu machen wären.</translation>
    </message>
    <message>
        <source>%1 saved at %2</source>
        <translation>%1 gespeichert unter %2</translation>
    </message>
    <message>
        <source>sheet</source>
        <translation>Blatt</translation>
    </message>
    <message>
        <source>sheets</source>
        <translation>Blätter</translation>
    </message>
    <message>
        <source>Choose a machine first: a trial belongs to one.</source>
        <translation>Zuerst eine Maschine wählen: ein Versuch gehört zu einer.</translation>
    </message>
    <message>
        <source>Choose a machine first: a balancing belongs to one.</source>
        <translation>Zuerst eine Maschine wählen: ein Auswuchten gehört zu einer.</translation>
    </message>
    <message>
        <source>Choose a machine first: a resonance map belongs to one.</source>
        <translation>Zuerst eine Maschine wählen: eine Resonanzkarte gehört zu einer.</translation>
    </message>
    <message>
        <source>No form is open in the register: open a machine there to put a bearing into it.</source>
        <translation>In den Stammdaten ist kein Formular offen: dort eine Maschine öffnen, um ein Lager einzutragen.</translation>
    </message>
    <message>
        <source>Alerts: %1</source>
        <translation>Alarme: %1</translation>
    </message>
</context>
</TS>
