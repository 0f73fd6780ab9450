# Was eine Prüfung findet. Die Meldung besteht aus ganzen Sätzen; was als Hinweis darunter steht, sind Aussagen hinter
# einem Doppelpunkt, ohne Punkt am Ende.

## Die Meldung

mated-already = Die Seite am Zug ist schon matt; prüf, wer am Zug ist.
stalemated-already = Die Seite am Zug hat keinen Zug: Es ist patt. Prüf, wer am Zug ist.
no-move-left = Die Seite am Zug hat keinen Zug; prüf, wer am Zug ist.

sooner-mate = { $moves ->
    [1] Es gibt ein Matt in einem Zug, kürzer als das verlangte in { $asked }: { $line }. Setz die Forderung auf #{ $moves }, oder ändere die Stellung.
   *[other] Es gibt ein Matt in { $moves } Zügen, kürzer als das verlangte in { $asked }: { $line }. Setz die Forderung auf #{ $moves }, oder ändere die Stellung.
}
several-mates = { $moves ->
    [1] { $number } Schlüsselzüge setzen in einem Zug matt: { $keys }. Ändere die Stellung so, dass nur einer bleibt, oder lass alle gelten.
   *[other] { $number } Schlüsselzüge setzen in { $moves } Zügen matt: { $keys }. Ändere die Stellung so, dass nur einer bleibt, oder lass alle gelten.
}
no-mate-in = { $moves ->
    [1] Es gibt kein Matt in einem Zug.
   *[other] Es gibt kein Matt in { $moves } Zügen oder weniger.
}
holds-against = { $whose ->
    [promised] { $number ->
        [1] Nach dem versprochenen { $first } hält nur { $reply }.
       *[other] Nach dem versprochenen { $first } hält { $reply } (insgesamt halten { $number } Verteidigungen).
    }
    [try] { $number ->
        [1] Nach der Verführung { $first } hält nur { $reply }.
       *[other] Nach der Verführung { $first } hält { $reply } (insgesamt halten { $number } Verteidigungen).
    }
   *[any] { $number ->
        [1] Nach { $first } hält nur { $reply }.
       *[other] Nach { $first } hält { $reply } (insgesamt halten { $number } Verteidigungen).
    }
}
leaves-stalemate = { $whose ->
    [promised] Nach dem versprochenen { $first } ist es patt.
    [try] Nach der Verführung { $first } ist es patt.
   *[any] Nach { $first } ist es patt.
}
is-no-mate = { $whose ->
    [promised] Nach dem versprochenen { $first } ist es nicht matt.
    [try] Nach der Verführung { $first } ist es nicht matt.
   *[any] Nach { $first } ist es nicht matt.
}
longer-mate = Es gibt ein Matt in { $moves } Zügen, mit { $keys }.
more-untold = Die erlaubte Zeit oder Rechenarbeit war zu Ende, bevor sich mehr sagen ließ.
promise-no-mate = { $moves ->
    [1] { $others ->
        [one] Die Datei verspricht { $promised }, doch das ist nicht matt; matt setzt { $keys }.
       *[other] Die Datei verspricht { $promised }, doch das ist nicht matt; matt setzen { $keys }.
    }
   *[other] { $others ->
        [one] Die Datei verspricht { $promised }, doch das setzt nicht in { $moves } Zügen matt; Schlüsselzug ist { $keys }.
       *[other] Die Datei verspricht { $promised }, doch das setzt nicht in { $moves } Zügen matt; Schlüsselzüge sind { $keys }.
    }
}
avoided-mates = { $moves ->
    [1] Die Datei rät von { $avoided } ab, doch das setzt matt.
   *[other] Die Datei rät von { $avoided } ab, doch das setzt in { $moves } Zügen matt.
}
variations-doubtful = In den Varianten der Datei stimmt nicht alles: Sieh dir die Hinweise an.
variations-hold = { $depth ->
    [none] Die { $number } Varianten der Datei halten stand.
   *[other] Die { $number } Varianten der Datei halten stand, nach einer Suche von { $depth } Halbzügen.
}
variations-mate = { $more ->
    [0] Bewiesen ist, dass nach { $lines } das Matt erzwungen ist.
    [one] Bewiesen ist, dass nach { $lines } und in { $more } weiteren Variante das Matt erzwungen ist.
   *[other] Bewiesen ist, dass nach { $lines } und in { $more } weiteren Varianten das Matt erzwungen ist.
}

## Die Meldung, wenn ein Matt nicht geklärt ist

mate-unsettled = Die erlaubte Zeit oder Rechenarbeit war zu Ende, bevor { $task } geklärt war.
nothing-proved-yet = Bewiesen ist noch nichts.
mate-proved = { $moves ->
    [1] Bewiesen ist bisher, dass { $line } sofort matt setzt.
   *[other] Bewiesen ist bisher, dass { $line } in { $moves } Zügen matt setzt und dass es kein kürzeres Matt gibt.
}
only-key-without-line = Es ist der einzige Schlüsselzug, doch seine Hauptvariante ist noch nicht bekannt.
other-keys-without-line = { $number ->
    [one] Ein weiterer Schlüsselzug ist { $keys }, doch die Hauptvariante ist noch nicht bekannt.
   *[other] Weitere Schlüsselzüge sind { $keys }, doch die Hauptvariante ist noch nicht bekannt.
}
not-only-key = { $moves ->
    [1] { $number ->
        [one] Es ist nicht der einzige Schlüsselzug: Auch { $keys } setzt sofort matt.
       *[other] Es ist nicht der einzige Schlüsselzug: Auch { $keys } setzen sofort matt.
    }
   *[other] { $number ->
        [one] Es ist nicht der einzige Schlüsselzug: Auch { $keys } setzt in { $moves } Zügen matt.
       *[other] Es ist nicht der einzige Schlüsselzug: Auch { $keys } setzen in { $moves } Zügen matt.
    }
}
only-key-open = Ob es der einzige Schlüsselzug ist, ist nicht geklärt.
first-moves-open = { $more ->
    [0] { $failed ->
        [one] Von den anderen ersten Zügen ist { $failed } widerlegt, und offen ist, ob diese matt setzen: { $open }.
       *[other] Von den anderen ersten Zügen sind { $failed } widerlegt, und offen ist, ob diese matt setzen: { $open }.
    }
   *[other] { $failed ->
        [one] Von den anderen ersten Zügen ist { $failed } widerlegt, und offen ist, ob diese matt setzen: { $open } und { $more } weitere.
       *[other] Von den anderen ersten Zügen sind { $failed } widerlegt, und offen ist, ob diese matt setzen: { $open } und { $more } weitere.
    }
}
no-mate-proved = { $moves ->
    [1] Bewiesen ist bisher, dass es kein Matt in einem Zug gibt.
   *[other] Bewiesen ist bisher, dass es kein Matt in { $moves } Zügen oder weniger gibt.
}
first-moves-fail = { $failed ->
    [one] Von den { $all } ersten Zügen ist für { $failed } bewiesen, dass er auch in { $moves } Zügen nicht matt setzt.
   *[other] Von den { $all } ersten Zügen ist für { $failed } bewiesen, dass sie auch in { $moves } Zügen nicht matt setzen.
}
allow-more = Erlaube mehr und prüf noch einmal.
allow-more-or-shorter = Erlaube mehr, oder lass nach kürzeren Matts suchen, und prüf noch einmal.

## Die Meldung bei Gewinn und Remis

no-mate-so-win = { $moves ->
    [1] Es gibt kein Matt in einem Zug, also wurde nach einem Gewinn gesucht.
   *[other] Es gibt kein Matt in { $moves } Zügen oder weniger, also wurde nach einem Gewinn gesucht.
}
no-mate-sought = Die Hälfte der erlaubten Zeit oder Rechenarbeit reichte nicht, um ein Matt zu suchen; also wurde nach einem Gewinn gesucht.
no-mate-then-cut = { $moves ->
    [1] Es gibt kein Matt in einem Zug; für längere reichte die Hälfte der erlaubten Zeit oder Rechenarbeit nicht, also wurde nach einem Gewinn gesucht.
   *[other] Es gibt kein Matt in { $moves } Zügen oder weniger; für längere reichte die Hälfte der erlaubten Zeit oder Rechenarbeit nicht, also wurde nach einem Gewinn gesucht.
}
ended-early = { $task ->
    [draw] Die erlaubte Zeit oder Rechenarbeit war nach { $depth } Halbzügen Suche zu Ende; ob die Seite am Zug Remis hält, lässt sich so nicht beurteilen.
   *[win] Die erlaubte Zeit oder Rechenarbeit war nach { $depth } Halbzügen Suche zu Ende; ob die Seite am Zug gewinnt, lässt sich so nicht beurteilen.
}
may-be-more = Vielleicht sind es noch mehr; nicht jeder Zug wurde beurteilt.
search-prefers = Die Datei verspricht { $promised }, die Suche zieht { $keys } vor.

tables-better = Nach den Endspieltabellen erreicht die Seite am Zug mehr als Remis; setz die Forderung auf +.
tables-none = { $task ->
    [draw] Nach den Endspieltabellen hält kein Zug Remis.
   *[win] Nach den Endspieltabellen gewinnt kein Zug.
}
tables-several = { $task ->
    [draw] Nach den Endspieltabellen hält mehr als ein Zug Remis: { $keys }. Ändere die Stellung so, dass nur einer bleibt, oder lass alle gelten.
   *[win] Nach den Endspieltabellen gewinnt mehr als ein Zug: { $keys }. Ändere die Stellung so, dass nur einer bleibt, oder lass alle gelten.
}

judged-better = Nach einer Suche von { $depth } Halbzügen erreicht die Seite am Zug mehr als Remis: { $best }. Setz die Forderung auf +.
judged-none = { $task ->
    [draw] Nach einer Suche von { $depth } Halbzügen hält kein Zug Remis; am besten noch: { $best }.
   *[win] Nach einer Suche von { $depth } Halbzügen gewinnt kein Zug; am besten noch: { $best }.
}
judged-several = { $task ->
    [draw] Nach einer Suche von { $depth } Halbzügen hält mehr als ein Zug Remis: { $keys }. Ändere die Stellung so, dass nur einer bleibt, oder lass alle gelten.
   *[win] Nach einer Suche von { $depth } Halbzügen gewinnt mehr als ein Zug: { $keys }. Ändere die Stellung so, dass nur einer bleibt, oder lass alle gelten.
}
judged-best = Nach einer Suche von { $depth } Halbzügen, nicht bewiesen: { $best }; der nächstbeste Zug: { $next }.
judged-only = Nach einer Suche von { $depth } Halbzügen, nicht bewiesen: { $best }, und es ist der einzige Zug.

move-stands-at = { $line } steht bei { $value }
move-mates-in = { $moves ->
    [1] { $line } setzt sofort matt
   *[other] { $line } setzt in { $moves } Zügen matt
}
move-is-mated-in = { $moves ->
    [1] { $line } wird in einem Zug matt
   *[other] { $line } wird in { $moves } Zügen matt
}

## Das Thema, wo es ein Mattbild nennt

topic-shown = { $extent ->
    [only] Thema bestätigt: { $pattern } steht nach { $last } auf dem Brett, am Ende der einzigen Variante von voller Länge.
    [all] Thema bestätigt: { $pattern } steht nach { $last } auf dem Brett, am Ende der Hauptvariante und jeder Variante von voller Länge (zusammen { $lines }).
    [some] Thema bestätigt: { $pattern } steht nach { $last } auf dem Brett, am Ende der Hauptvariante (in { $showing } von { $lines } Varianten voller Länge).
   *[main] Thema bestätigt: { $pattern } steht nach { $last } auf dem Brett, am Ende der Hauptvariante.
}
topic-shown-by-coach = Thema bestätigt: { $pattern } steht nach { $last } auf dem Brett, am Ende deiner Variante { $line }. Von { $from } an ist das Matt bewiesen.
topic-not-shown = { $shows ->
    [none] { $whose ->
        [main] Thema nicht bestätigt, { $pattern }: Die Hauptvariante { $line } endet mit { $last } in einem Matt ohne Namen.
        [full] Thema nicht bestätigt, { $pattern }: Die Variante { $line }, die die volle Länge hat, endet mit { $last } in einem Matt ohne Namen.
       *[own] Thema nicht bestätigt, { $pattern }: Deine Variante { $line } endet mit { $last } in einem Matt ohne Namen.
    }
   *[other] { $whose ->
        [main] Thema nicht bestätigt, { $pattern }: Die Hauptvariante { $line } endet mit { $last } in einem anderen Bild, { $shows }.
        [full] Thema nicht bestätigt, { $pattern }: Die Variante { $line }, die die volle Länge hat, endet mit { $last } in einem anderen Bild, { $shows }.
       *[own] Thema nicht bestätigt, { $pattern }: Deine Variante { $line } endet mit { $last } in einem anderen Bild, { $shows }.
    }
}
topic-without-mate = Thema nicht bestätigt, { $pattern }: Keine Variante endet mit Matt. Gib deine eigene bis zum Matt an, als PGN, und was abgelehnt wird, als Nebenvarianten.
topic-unsettled = Thema nicht bestätigt, { $pattern }: Die erlaubte Zeit oder Rechenarbeit war zu Ende, bevor es feststand. Erlaub mehr und prüf noch einmal.
topic-not-all-known = { $lines ->
    [one] Thema nicht bestätigt, { $pattern }: { $lines } Variante zeigt es, und nicht alle von voller Länge sind bekannt.
   *[other] Thema nicht bestätigt, { $pattern }: { $lines } Varianten zeigen es, und nicht alle von voller Länge sind bekannt.
}
topic-unchecked = Thema nicht bestätigt, { $pattern }: Die Stellung wurde geprüft, als Schlussbilder noch nicht gespeichert wurden. Sie wird vor dem Stellen neu geprüft, oder wenn du ihre Datei noch einmal prüfst.
topic-figures = { $showing ->
    [one] Von { $lines } Varianten voller Länge zeigt es { $showing }.
   *[other] Von { $lines } Varianten voller Länge zeigen es { $showing }.
}
topic-elsewhere = { $shows ->
    [none] Die Variante { $line } endet mit { $last } in einem Matt ohne Namen.
   *[other] Die Variante { $line } endet mit { $last } in einem anderen Bild, { $shows }.
}
topic-declined = { $number ->
    [one] Eine deiner Varianten endet ohne Matt: { $line }.
   *[other] { $number } deiner Varianten enden ohne Matt, die erste ist { $line }.
}

## Die Hinweise

tries-cut = die erlaubte Zeit oder Rechenarbeit war zu Ende, bevor alle Verführungen gesucht waren; die Schlüsselzüge sind vollständig, die Schwierigkeit ist nicht geschätzt
fifty-moves = die FEN zählt { $number } Halbzüge ohne Schlag- oder Bauernzug; in einer Partie ließe sich vor dem Matt nach der 50-Züge-Regel Remis verlangen, in einem Problem zählt sie nicht
position-again = das ist noch einmal die Stellung „{ $id }“
topic-too-long = das Thema in der Datei ist länger als { $most } Zeichen und wurde weggelassen; es beginnt mit „{ $begins }“
kept-with-other-task = dieselbe Stellung ist mit einer anderen Forderung gespeichert: { $kept }

in-variation = Zeile { $row }, Zug { $line }: { $what }
more-in-variations = { $more ->
    [one] in den Varianten der Datei stimmt noch { $more } Sache nicht
   *[other] in den Varianten der Datei stimmen noch { $more } weitere Sachen nicht
}
variations-cut = die erlaubte Zeit oder Rechenarbeit war in Zeile { $row } bei { $line } zu Ende, bevor alle Varianten der Datei geprüft waren

goes-on-too-long = die Variante geht weiter, als die Forderung Züge erlaubt
had-to-mate = { $better ->
    [none] das ist nicht matt; schon davor ist das Matt vergeben
   *[other] das ist nicht matt; besser ist { $better }
}
lets-mate-go = { $better ->
    [none] { $holds ->
        [none] danach gibt es kein Matt in { $moves } Zügen; schon davor ist das Matt vergeben
       *[other] danach gibt es kein Matt in { $moves } Zügen; { $holds } hält; schon davor ist das Matt vergeben
    }
   *[other] { $holds ->
        [none] danach gibt es kein Matt in { $moves } Zügen; besser ist { $better }
       *[other] danach gibt es kein Matt in { $moves } Zügen; { $holds } hält; besser ist { $better }
    }
}
wrong-yet-mates = { $moves ->
    [1] der Zug ist als falsch bezeichnet und setzt doch sofort matt
   *[other] der Zug ist als falsch bezeichnet und setzt doch in { $moves } Zügen matt
}
holds-not = { $number ->
    [one] das widerlegt den Zug davor nicht; { $holds } tut es
   *[other] das widerlegt den Zug davor nicht; { $holds } tun es
}
sign-yet-mates = die Variante endet mit einem Zeichen dafür, dass sie nicht gewinnt, und führt doch zum Matt
mate-sign-wrong = der Zug ist mit # geschrieben, ist aber nicht matt
wrong-yet-does = { $task ->
    [draw] der Zug ist als falsch bezeichnet und hält doch Remis: { $standing }
   *[win] der Zug ist als falsch bezeichnet und gewinnt doch: { $standing }
}
lets-it-go = { $better ->
    [none] { $task ->
        [draw] das hält nicht mehr Remis: { $standing }; kein Zug hält mehr Remis
       *[win] das gewinnt nicht mehr: { $standing }; kein Zug gewinnt mehr
    }
   *[other] { $task ->
        [draw] das hält nicht mehr Remis: { $standing }; besser ist { $better }
       *[win] das gewinnt nicht mehr: { $standing }; besser ist { $better }
    }
}
refutes-not = { $better ->
    [none] das widerlegt den Zug davor nicht: { $standing }
   *[other] das widerlegt den Zug davor nicht: { $standing }; { $better } tut es
}
ends-with = die Variante endet mit { $sign }, doch { $standing }

is-mate-now = es ist matt
is-stalemate-now = es ist patt
neither-can-mate = keine Seite kann mehr matt setzen
tables-say = { $known ->
    [win] nach den Endspieltabellen gewinnt { $side-name }
    [loss] nach den Endspieltabellen verliert { $side-name }
   *[draw] nach den Endspieltabellen hält { $side-name } Remis
}
search-says = nach einer Suche von { $depth } Halbzügen steht { $side-name } bei { $value }
search-says-mate = { $moves ->
    [1] nach einer Suche von { $depth } Halbzügen setzt { $side-name } in einem Zug matt
   *[other] nach einer Suche von { $depth } Halbzügen setzt { $side-name } in { $moves } Zügen matt
}
search-says-mated = { $moves ->
    [1] nach einer Suche von { $depth } Halbzügen wird { $side-name } in einem Zug matt
   *[other] nach einer Suche von { $depth } Halbzügen wird { $side-name } in { $moves } Zügen matt
}

## Eine zweite Meinung von einem Schachprogramm

second-opinion-agrees = zweite Meinung von { $engine } nach { $depth } Halbzügen: auch { $line } ({ $score })
second-opinion-prefers = zweite Meinung von { $engine } nach { $depth } Halbzügen: lieber { $line } ({ $score })
engine-not-started = keine zweite Meinung: das Programm { $engine } lässt sich nicht starten: { $error }; prüf den Pfad unter [engine] in den Einstellungen
engine-not-uci = keine zweite Meinung: das Programm { $engine } antwortet nicht innerhalb von { $seconds } s in UCI
engine-ended = keine zweite Meinung: das Programm { $engine } hat sich während der Frage beendet
engine-hung = keine zweite Meinung: das Programm { $engine } gab in der erlaubten Zeit keinen Zug und wurde beendet
engine-move-wrong = keine zweite Meinung: das Programm { $engine } gab „{ $written }“, und das ist hier kein möglicher Zug
