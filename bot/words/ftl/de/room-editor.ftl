# The editor on the coach's page: lessons that are being written, the board, and positions written anew. $square is a
# square such as e4; $piece names a piece by colour and kind, in the letters of English: wn is a white knight.

## Around it

editor-nav = Schreiben
editor-title = Eine Lektion schreiben
editor-edit-title = Eine Stellung bearbeiten
editor-to-check = Zurück zu den geprüften Stellungen
editor-to-week = Zur Woche
editor-what = Eine Lektion wird in Schritten geschrieben: Worte, ein Beispiel, eine Stellung zum Lösen, eine Frage. Was du schreibst, wird beim Schreiben gespeichert.
editor-begin = Eine Lektion beginnen
editor-no-drafts = Es ist nichts in Arbeit.
editor-untitled = Ohne Titel
editor-draft-count = { $steps ->
    [one] { $steps } Schritt, zuletzt bearbeitet:
   *[other] { $steps } Schritte, zuletzt bearbeitet:
}
editor-is-lesson = Er gehört zu einer Lektion.
editor-open = Weiterschreiben
editor-write = Im Editor öffnen
editor-edit = Bearbeiten
editor-remove = Entwurf entfernen
editor-remove-sure = Den Entwurf „{ $title }“ entfernen? Was darin steht, ist dann weg; eine Lektion, die aus ihm wurde, bleibt.
editor-remove-it = Entfernen
editor-removed = Der Entwurf „{ $title }“ ist entfernt.
editor-all-drafts = Alle Entwürfe
editor-copy = Ein Teil dieser Lektion war schon dran, deshalb ist dies eine Kopie. Gib ihr einen eigenen Titel; aufgenommen wird sie als weitere Lektion.

## A draft. $why is a sentence with its full stop; $what a statement that begins with a small letter.

editor-draft-title = Titel der Lektion
editor-keeping = Wird gespeichert …
editor-kept = Alles ist gespeichert.
editor-not-kept = Noch nicht gespeichert: { $why } Was du geschrieben hast, bleibt hier und in diesem Browser.
editor-overtaken = An diesem Entwurf wurde inzwischen anderswo geschrieben, in einem anderen Tab oder von einem anderen Trainer. Nichts ist verloren: Beide Fassungen sind da. Was soll mit deiner werden?
editor-keep-mine = Meine als eigenen Entwurf behalten
editor-take-theirs = Mit der anderen Fassung weitermachen
editor-my-version = { $title } (meine Fassung)
editor-step = Schritt { $step }
# $kind as in editor-kind.
editor-step-of = { $kind ->
    [example] Schritt { $step }: Beispiel
    [stop] Schritt { $step }: zum Lösen
    [question] Schritt { $step }: Frage
   *[words] Schritt { $step }: Worte
}
editor-fault = Nicht fertig: { $what }.
editor-remove-step = Entfernen
editor-remove-step-sure = Schritt { $step } mit allem entfernen, was darin steht?
editor-remove-step-it = Schritt entfernen
editor-add = { $kind ->
    [example] Beispiel hinzufügen
    [stop] Stellung zum Lösen hinzufügen
    [question] Frage hinzufügen
   *[words] Worte hinzufügen
}
editor-preview = Den Schritt sehen wie die Mitglieder
editor-checking = Wird geprüft …
editor-the-reveal = Bei der Auflösung
editor-take-in-what = Beim Aufnehmen wird jede Stellung geprüft, dann ist die Lektion bereit für die Woche. Der Entwurf bleibt.
editor-take-in-again = Beim Aufnehmen tritt der Entwurf an die Stelle seiner Lektion: Was davon in der Woche wartet, behält seinen Platz. War etwas aus der Lektion schon dran, wird stattdessen eine weitere daraus.

## A step

editor-step-kind = Was dieser Schritt ist
editor-kind = { $kind ->
    [example] Beispiel
    [stop] Zum Lösen
    [question] Frage oder Hausaufgabe
   *[words] Worte
}
editor-kind-what = { $kind ->
    [example] Züge werden gezeigt. Der Schritt geht auf einmal hinaus, mit Zügen, Varianten und Worten.
    [stop] Die Mitglieder werden nach einem Zug gefragt. Gib die Forderung der Stellung an, oder markiere Züge als Stopps; die Züge vor einem Stopp führen zu ihm hin, die danach sind deine eigene Variante für die Auflösung.
    [question] Die Mitglieder antworten in eigenen Worten. Züge, falls es welche gibt, werden mit der Frage gezeigt; das Bild zeigt, wohin sie führen.
   *[words] Worte, mit oder ohne Stellung. Die Stellung wird als Bild gezeigt, wenn du eine aufstellst.
}
editor-words = Worte zur Aufgabe
editor-asked = Was du fragst
editor-anyway = Diese Worte auch dann zur Aufgabe schicken, wenn sie einen Zug verraten
editor-at-reveal = Worte zur Auflösung
editor-task = Forderung
editor-task-start = Forderung dieser Stellung
editor-task-what = #1 bis #20 für ein Matt, + für Gewinn, = für Remis; bleibt das Feld leer, sucht die Prüfung eine.
editor-task-start-what = #1 bis #20 für ein Matt, + für Gewinn, = für Remis. Lass das Feld leer, wenn nur nach späteren Zügen gefragt wird.
editor-step-topic = Thema, wenn nicht das der Lektion
editor-contrast = Gegenbeispiel: Das Thema soll hier nicht aufgehen
editor-question-behind = Eine Frage danach, wenn du magst

## The board

editor-board = Brett
editor-keys = Mit der Tastatur: Pfeile gehen von Feld zu Feld, Enter nimmt auf und setzt ab oder stellt hin, Entf nimmt weg, Esc stellt zurück.
editor-tools = Werkzeuge
editor-set-up = Aufstellen
editor-moves = Züge
editor-flip = Brett drehen
editor-undo = Rückgängig
editor-redo = Wiederholen
editor-no-position = Zu diesen Worten wird keine Stellung gezeigt. Stell eine auf, wenn du magst.
editor-square-empty = { $square }, leer
editor-square-holds = { $piece ->
    [wk] Weißer König auf { $square }
    [wq] Weiße Dame auf { $square }
    [wr] Weißer Turm auf { $square }
    [wb] Weißer Läufer auf { $square }
    [wn] Weißer Springer auf { $square }
    [wp] Weißer Bauer auf { $square }
    [bk] Schwarzer König auf { $square }
    [bq] Schwarze Dame auf { $square }
    [br] Schwarzer Turm auf { $square }
    [bb] Schwarzer Läufer auf { $square }
    [bn] Schwarzer Springer auf { $square }
   *[bp] Schwarzer Bauer auf { $square }
}
# $what is editor-square-empty or editor-square-holds.
editor-square-target = { $what }; die Figur in der Hand kann hierher
editor-picked = In der Hand: { $what }
editor-put-back = Zurückgestellt.
editor-not-legal = Das ist hier kein legaler Zug.
editor-played = Gezogen: { $move }

## Setting up

editor-palette = Figuren zum Aufstellen
editor-hand = Figuren verschieben
editor-rubber = Figuren wegnehmen
editor-piece = { $piece ->
    [wk] Weißer König
    [wq] Weiße Dame
    [wr] Weißer Turm
    [wb] Weißer Läufer
    [wn] Weißer Springer
    [wp] Weißer Bauer
    [bk] Schwarzer König
    [bq] Schwarze Dame
    [br] Schwarzer Turm
    [bb] Schwarzer Läufer
    [bn] Schwarzer Springer
   *[bp] Schwarzer Bauer
}
editor-clear = Brett leeren
editor-initial = Grundstellung
editor-to-move = Am Zug
editor-white = Weiß
editor-black = Schwarz
editor-passing = En passant auf
editor-no-passing = nirgends
editor-castling = Rochade
editor-castling-of = { $right ->
    [white-short] Weiß, kurz
    [white-long] Weiß, lang
    [black-short] Schwarz, kurz
   *[black-long] Schwarz, lang
}
editor-fen = FEN, zum Einfügen oder Kopieren

## Moves

editor-start = Anfang
editor-no-moves = Noch keine Züge. Zieh auf dem Brett, oder tipp sie ein.
editor-back = Einen Zug zurück
editor-on = Einen Zug vor
editor-type-move = Ein Zug, getippt
editor-enter-move = Eingeben
editor-about-move = Zu { $move }
editor-sign-move = Zeichen am Zug
editor-sign-position = Zeichen zur Stellung
editor-no-sign = keines
editor-words-before = Worte davor
editor-words-after = Worte danach
editor-promote = Zur Hauptvariante machen
editor-cut = Mit allem entfernen, was folgt
editor-stop = Die Mitglieder nach diesem Zug fragen
editor-stop-here = gefragt
# $task is a sign such as #2.
editor-stop-task = gefragt, { $task }
editor-become = Was wird aus dem Bauern?
editor-become-what = { $piece ->
    [q] Dame
    [r] Turm
    [b] Läufer
   *[n] Springer
}

## A position written anew

editor-save = Speichern und prüfen
editor-saved = Gespeichert und geprüft.
editor-start-over = Zurück zum Gespeicherten
editor-typed-before = Das hast du hier vorher geschrieben und nicht gespeichert.
