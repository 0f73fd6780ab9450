# Was die anderen Dateien brauchen: Zahlen, Aufzählungen, Figuren, Seiten.

language = Deutsch
decimal-sign = ,
thousands-sign = .
thousands-from = 4

weekday-names = Montag Dienstag Mittwoch Donnerstag Freitag Samstag Sonntag
month-names = Januar Februar März April Mai Juni Juli August September Oktober November Dezember
month-names-short = Jan Feb März Apr Mai Juni Juli Aug Sept Okt Nov Dez
# Steht nach „am“ oder „bis“.
moment = { $weekday }, { $day }. { $month }, { $time } Uhr
dated = { $day }. { $month } { $year }, { $time } Uhr
day = { $day }. { $month }
date = { $day }. { $month } { $year }
# König, Dame, Turm, Läufer, Springer, wie man Züge schreibt.
piece-letters = KDTLS

number = { $n ->
    [0] keinem
    [1] einem
    [2] zwei
    [3] drei
    [4] vier
    [5] fünf
    [6] sechs
    [7] sieben
    [8] acht
    [9] neun
    [10] zehn
   *[other] { $n }
}

list-comma = { $first }, { $next }
list-and = { $first } und { $next }
list-or = { $first } oder { $next }
list-why = { $first }, und { $next }

# .nom, .acc, .dat: mit dem Artikel; .your-: mit „dein“; .no-: mit „kein“; .a-: mit „ein“;
# .it: das Fürwort im vierten Fall; .word: nur das Wort, im vierten Fall .word-acc, in der Mehrzahl .many.
piece-pawn = Bauer
    .nom = der Bauer
    .acc = den Bauern
    .dat = dem Bauern
    .your-nom = dein Bauer
    .your-acc = deinen Bauern
    .no-nom = kein Bauer
    .no-acc = keinen Bauern
    .a-nom = ein Bauer
    .a-acc = einen Bauern
    .dat-a = einem Bauern
    .it = ihn
    .own = einem eigenen Bauern
    .many = Bauern
piece-knight = Springer
    .nom = der Springer
    .acc = den Springer
    .dat = dem Springer
    .your-nom = dein Springer
    .your-acc = deinen Springer
    .no-nom = kein Springer
    .no-acc = keinen Springer
    .a-nom = ein Springer
    .a-acc = einen Springer
    .dat-a = einem Springer
    .it = ihn
    .own = einem eigenen Springer
    .many = Springer
piece-bishop = Läufer
    .nom = der Läufer
    .acc = den Läufer
    .dat = dem Läufer
    .your-nom = dein Läufer
    .your-acc = deinen Läufer
    .no-nom = kein Läufer
    .no-acc = keinen Läufer
    .a-nom = ein Läufer
    .a-acc = einen Läufer
    .dat-a = einem Läufer
    .it = ihn
    .own = einem eigenen Läufer
    .many = Läufer
piece-rook = Turm
    .nom = der Turm
    .acc = den Turm
    .dat = dem Turm
    .your-nom = dein Turm
    .your-acc = deinen Turm
    .no-nom = kein Turm
    .no-acc = keinen Turm
    .a-nom = ein Turm
    .a-acc = einen Turm
    .dat-a = einem Turm
    .it = ihn
    .own = einem eigenen Turm
    .many = Türme
piece-queen = Dame
    .nom = die Dame
    .acc = die Dame
    .dat = der Dame
    .your-nom = deine Dame
    .your-acc = deine Dame
    .no-nom = keine Dame
    .no-acc = keine Dame
    .a-nom = eine Dame
    .a-acc = eine Dame
    .dat-a = einer Dame
    .it = sie
    .own = der eigenen Dame
    .many = Damen
piece-king = König
    .nom = der König
    .acc = den König
    .dat = dem König
    .your-nom = dein König
    .your-acc = deinen König
    .no-nom = kein König
    .no-acc = keinen König
    .a-nom = ein König
    .a-acc = einen König
    .dat-a = einem König
    .it = ihn
    .own = dem eigenen König
    .many = Könige
piece-any = Figur
    .nom = die Figur
    .acc = die Figur
    .dat = der Figur
    .your-nom = deine Figur
    .your-acc = deine Figur
    .no-nom = keine Figur
    .no-acc = keine Figur
    .a-nom = eine Figur
    .a-acc = eine Figur
    .dat-a = einer Figur
    .it = sie
    .own = einer eigenen Figur
    .many = Figuren

side-white = Weiß
    .name = Weiß
    .king = der weiße König
    .pawn = kein weißer Bauer
side-black = Schwarz
    .name = Schwarz
    .king = der schwarze König
    .pawn = kein schwarzer Bauer
