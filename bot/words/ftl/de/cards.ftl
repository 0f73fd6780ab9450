# Themenkarten: was ein Trainer zu einem Mattbild außer seiner Definition (naming.ftl) sagt, und wie Karten aufgebaut sind.

## Worauf am Brett zu achten ist, nach dem Namen des Mattbilds

look-arabian = Ein Turm auf der siebten Reihe und ein Springer, der das Feld zwei Schritte schräg vor der Ecke erreicht. Frage dich, welches Springerschach den König in die Ecke treibt und ob jemand den Turm neben ihm schlagen kann.
look-anastasia = Ein Springer auf e7 gegen einen rochierten König (oder auf d7, e2, d2) und ein h-Bauer, der sich wegreißen lässt. Prüfe, ob nach einem Damenopfer auf der Randlinie ein Turm auf ihr folgen kann.
look-hook = Ein Springer neben dem König, dahinter ein deckender Bauer. Suche einen Turm, der das vom Springer gedeckte Feld erreicht; beginne mit dem Schach, nach dem der König daneben treten muss.
look-vukovic = Ein König am Rand und ein Springer zwei Felder vor ihm. Auf dem Feld dazwischen setzt ein Turm matt, wenn ihn dort noch etwas anderes als der Springer deckt.
look-boden = Ein lang rochierter König, vor dem der c-Bauer fehlt oder weggezwungen werden kann. Bestreicht ein Läufer schon die Felder neben ihm, dann frage, was der andere braucht, um auf die kreuzende Diagonale zu kommen; oft ist es ein Damenopfer auf c3 oder c6.
look-balestra = Ein König, dessen Fluchtfelder auf zwei Linien der Dame liegen, etwa einer senkrechten und einer Diagonalen. Such ein Feld, von dem die Dame sie alle nimmt, und eine Diagonale, auf der der Läufer dann Schach gibt.
look-legal = Der gegnerische König zu Hause, ein Läufer, der auf f7 oder f2 zielt, zwei Springer nahe der Mitte. Zieht ein Springer aus der Fesselung, obwohl die Dame dabei verloren geht, dann zähle, ob die Schachs der Leichtfiguren genügen.
look-blackburne = Beide Läufer auf langen Diagonalen zum rochierten König und ein Springer auf g5 oder g4. Suche einen Schlagzug, der die Linie nach h7 oder h2 öffnet; der Springer hält den Läufer dort am Leben.
look-reti = Ein von eigenen Figuren umstellter König und ein Läufer, hinter dem Turm oder Dame steht. Suche ein Doppelschach, das ihm ein einziges Feld lässt, neben das der Läufer zurückkehren kann, die Schwerfigur im Rücken.
look-greco = Ein König in der Ecke, vor dem der g-Bauer noch steht, und dein Läufer blickt auf das Feld neben ihm. Alles dreht sich um die h-Linie: Welcher Springer, welche Dame lässt sich hergeben, um sie zu öffnen?
look-morphy = Ein Turm auf der Linie neben dem König und ein Läufer, vor dem auf der langen Diagonale eine gegnerische Figur steht. Treibe den König mit dem Turm in die Ecke und schlage dann, was dem Läufer im Weg ist.
look-pillsbury = Die Linie des rochierten Königs ist offen, und dein Läufer nimmt schon das Eckfeld. Ein Turm, der mit Schach auf diese Linie kommt, entscheidet; was dazwischenzieht, wird geschlagen.
look-opera = Der König noch in der Mitte, dein Läufer auf der Diagonale, die das Feld vor ihm nimmt, ein Turm auf der offenen Linie. Finde heraus, wer das Feld neben dem König deckt, und lenke diesen Stein ab.
look-mayet = Dein Läufer auf der langen Diagonale und eine offene h-Linie. Kannst du dem König auf dieser Linie Schach geben, so muss er zurück, und der Turm folgt in die Ecke.
look-anderssen = Ein Bauer oder Läufer von dir steht unmittelbar vor dem rochierten König und ist nicht zu schlagen. Dann frage nur noch, wie Turm oder Dame auf die Randlinie kommen.
look-blind-swine = Zwei Türme auf der siebten Reihe gegen einen König, den der eigene Turm einengt. Schlage mit Schach dort, wo die Türme einander decken, und sieh, auf welcher Seite er nicht mehr zurückkann.
look-smothered = Ein König in der Ecke, rundum eigene Steine bis auf ein Feld. Ein Damenopfer auf diesem Feld, vom Springer gedeckt, zwingt seinen eigenen Turm, es zu schließen; den Rest erledigt der Springer.
look-suffocation = Ein Läufer auf der langen Diagonale gegen einen rochierten König ohne g-Bauern. Suche das Springerschach und prüfe vorher, ob der Springer nicht selbst dem Läufer im Weg steht.
look-corner = Ein König in der Ecke hinter seinem h-Bauern, ein Turm auf der g-Linie. Sieh, wo ein Springer Schach geben kann und wie sich der einzige Wächter dieses Feldes weglocken lässt.
look-damiano = Ein Bauer, der bis auf die dritte Reihe vor den König gekommen ist, und eine offene Randlinie. Bringe die Dame mit Schach dorthin: Steht sie erst neben dem König, deckt sie der Bauer.
look-lolli = Ein Bauer auf f6 oder h6 (auf der anderen Seite f3, h3) neben einem geschwächten g-Bauern. Kommt die Dame auf das Feld daneben, dann prüfe, ob noch jemand das Feld vor dem König deckt.
look-max-lange = Der König ist neben der Ecke hochgegangen, und dein Läufer steht auf der siebten Reihe, nahe an der Grundreihe. Bringe die Dame hinter ihn: Der Läufer deckt sie und nimmt den Ausweg.
look-dovetail = Ein König mit zwei eigenen Steinen im rechten Winkel zueinander. Das Feld schräg gegenüber gehört der Dame; sorge dafür, dass sie dort gedeckt ist.
look-swallow-tail = Ein König mit zwei eigenen Steinen schräg hinter sich. Stelle ihm die Dame gedeckt gegenüber, und ihm bleibt nichts.
look-epaulette = Ein König am Rand zwischen zwei eigenen Steinen. Suche die Linie genau vor ihm: Die Dame braucht dort ein sicheres Feld, zwei Schritte entfernt oder mehr.
look-double-bishop = Zwei Läufer auf benachbarten Diagonalen gegen einen König in der Ecke. Nimmt einer schon das Feld neben ihm, kann jedes Schach des anderen auf seiner langen Linie das Matt sein.
look-ladder = Zwei Türme (oder Turm und Dame) und ein offenes Brett. Schneide den König auf einer Linie ab und gib auf der nächsten Schach; achte nur darauf, dass er die nähere Figur nicht angreifen kann.
look-back-rank = Ein König hinter unbewegten Bauern und eine Grundreihe, die nur eine Figur bewacht. Zähle Angreifer und Verteidiger des Feldes, auf dem du Schach geben willst; ein Angreifer mehr oder ein Wächter, der sich ablenken lässt, genügt.
look-corridor = Ein König auf einer Linie, die zu beiden Seiten vom Rand oder von eigenen Steinen geschlossen ist. Suche einen Turm oder eine Dame, die entlang dieser Linie Schach geben können, und das eine Feld, das vielleicht noch frei ist.
look-kiss = Ein König mit wenigen Feldern, und neben ihm eines, das du zweimal angreifst. Die Dame kommt mit Schach dorthin; frage jedes Mal, wer sie deckt.
look-double-check = Ein Turm oder Läufer zielt auf den König, und dazwischen steht dein Springer oder ein anderer Stein. Zieht der auch noch mit Schach weg, hilft kein Schlagen und kein Dazwischenziehen: Sieh nur noch auf die Felder, die dem König bleiben.
look-pawn = Ein König, der sich ins Freie nahe an deine Bauern gewagt hat. Bevor du noch eine Figur holst, sieh, ob der nächste Bauernzug Schach ist und wer die Felder daneben nimmt.

## Was zwei Verwandte trennt, nach ihren Namen in der Reihenfolge des Alphabets

apart-anastasia-arabian = Beim Arabischen Matt steht der Turm neben dem König in der Ecke, vom Springer gedeckt. Bei Anastasias Matt deckt der Springer keine Figur: Er nimmt Felder der Linie daneben, auf der dem König ein eigener Stein im Weg steht.
apart-anastasia-corridor = Beim Korridormatt lassen dem König der Rand oder die eigenen Steine auf jeder Seite höchstens ein Feld. Bei Anastasias Matt genügt ein einziger eigener Stein, denn die anderen Felder dieser Seite nimmt der Springer.
apart-anastasia-greco = Das Schach kommt bei beiden am Rand entlang. Bei Grecos Matt steht der König in der Ecke, und ein Läufer nimmt das Feld neben ihm; bei Anastasias Matt nimmt ein Springer die Felder der Linie daneben.
apart-anastasia-hook = Beim Hakenmatt steht der Springer neben dem König und deckt den Turm. Bei Anastasias Matt ist er drei Linien entfernt und nimmt nur Felder.
apart-anderssen-mayet = Das Matt kommt bei beiden aus der Ecke neben dem rochierten König. Bei Mayets Matt deckt ein Läufer den Turm aus der Ferne; bei Anderssens Matt steht der deckende Bauer oder Läufer unmittelbar vor dem König.
apart-anderssen-opera = Beim Opernmatt steht der Turm neben dem König, aber nicht in der Ecke, und ein Läufer auf seiner Diagonale deckt ihn. Bei Anderssens Matt steht er in der Ecke, und was ihn deckt, steht unmittelbar vor dem König.
apart-anderssen-pawn = Bei Anderssens Matt deckt mitunter ein Bauer die Figur, die Schach gibt. Beim Matt durch einen Bauern gibt der Bauer selbst das Schach.
apart-arabian-hook = Ein Springer deckt bei beiden den Turm. Beim Arabischen Matt steht er zwei Felder weit auf der Eckdiagonale; beim Hakenmatt berührt er den König, und ein Bauer muss ihn decken.
apart-arabian-vukovic = Beim Arabischen Matt steht der König in der Ecke, und der Springer deckt den Turm. Bei Vukovićs Matt steht er nicht in der Ecke, und der Springer steht direkt hinter dem Turm, den also etwas anderes decken muss.
apart-back-rank-corridor = Auf der Grundreihe des Königs ist es das Grundreihenmatt; auf jeder anderen Reihe oder auf einer Linie ist es das Korridormatt.
apart-back-rank-ladder = Beim Grundreihenmatt halten die eigenen Steine den König auf der Grundreihe fest. Beim Treppenmatt nimmt ihm ein zweiter Turm oder eine Dame die ganze nächste Linie.
apart-balestra-boden = Bei beiden gibt ein Läufer aus der Entfernung Schach. Bei Balestras Matt nimmt die Dame die übrigen Fluchtfelder; bei Bodens Matt tut es ein zweiter Läufer, auf einer Diagonalen, die die erste kreuzt.
apart-balestra-max-lange = Dame und Läufer setzen bei beiden matt. Bei Balestras Matt gibt der Läufer Schach, und die Dame steht abseits; bei Max Langes Matt gibt die Dame neben dem König Schach, und der Läufer deckt sie.
apart-blackburne-boden = Zwei Läufer sind bei beiden nötig. Bei Bodens Matt gibt der Läufer aus der Entfernung Schach, und die beiden brauchen keine weitere Hilfe; bei Blackburnes Matt steht er neben dem König, und ein Springer deckt ihn dort.
apart-blackburne-legal = Bei Blackburnes Matt arbeiten zwei Läufer und ein Springer, der den mattsetzenden deckt. Beim Seekadettenmatt sind es zwei Springer und ein Läufer, und keiner von ihnen wäre zu entbehren.
apart-blackburne-reti = Ein Läufer setzt bei beiden vom Feld neben dem König matt. Bei Blackburnes Matt deckt ihn ein Springer; bei Rétis Matt tut es Turm oder Dame, und vier oder mehr eigene Steine stehen dem König im Weg.
apart-blind-swine-ladder = Beim Matt der blinden Schweine steht der schachgebende Turm unmittelbar vor dem König, und der andere deckt ihn. Beim Treppenmatt kommt das Schach aus der Entfernung am Rand entlang, und die andere Figur nimmt die nächste Linie.
apart-boden-double-bishop = Bei Bodens Matt kreuzen sich die Diagonalen der beiden Läufer; beim Matt mit zwei Läufern laufen sie nebeneinander.
apart-corner-morphy = Eine Schwerfigur nimmt bei beiden die Linie neben dem König in der Ecke. Beim Eckmatt gibt ein Springer Schach, bei Morphys Matt ein Läufer auf der langen Diagonale.
apart-corner-smothered = Beim erstickten Matt stehen auf allen Feldern um den König eigene Steine. Beim Eckmatt ist die Linie neben ihm frei von ihnen, und ein Turm oder eine Dame nimmt sie.
apart-corner-suffocation = Ein Springer gibt bei beiden Schach. Was dem König bleibt, nimmt beim Eckmatt ein Turm oder eine Dame auf einer Linie, beim Erstickungsmatt mit Läufer ein Läufer auf einer Diagonale.
apart-corridor-greco = Grecos Matt ist ein Korridor besonderer Art: der König in der Ecke, das Schach auf der Randlinie und ein Läufer auf dem einen Feld, das noch bleibt. Ohne diesen Läufer ist es einfach ein Korridormatt.
apart-corridor-ladder = Beim Korridormatt schließen der Rand oder die eigenen Steine des Königs die Linie auf beiden Seiten. Beim Treppenmatt nimmt ein zweiter Turm oder eine Dame die Linie daneben.
apart-damiano-lolli = Ein Bauer deckt bei beiden die Dame. Bei Damianos Matt steht der Bauer genau vor dem König und die Dame seitlich; bei Lollis Matt steht die Dame vor dem König und der Bauer seitlich.
apart-double-check-reti = Vor Rétis Matt kommt oft ein Doppelschach, doch am Ende gibt der Läufer allein Schach. Beim Matt durch Doppelschach gibt der letzte Zug selbst zweimal Schach.
apart-double-check-smothered = Beim erstickten Matt gibt ein Springer Schach, und auf allen Feldern um den König stehen eigene Steine. Beim Matt durch Doppelschach geben es zwei Figuren, und Felder um ihn können frei von eigenen Steinen sein, nur nicht sicher.
apart-dovetail-kiss = Beim Taubenschwanzmatt stehen eigene Steine auf den beiden Feldern neben dem König, die die Dame nicht erreicht. Beim einfachen Damenkuss nimmt mindestens eines dieser Felder eine andere Figur, oder es läge jenseits des Randes.
apart-dovetail-swallow-tail = Beim Taubenschwanzmatt berührt die Dame den König schräg, beim Schwalbenschwanzmatt steht sie ihm Auge in Auge gegenüber. Eigene Steine stehen auf den beiden Feldern, die sie von dort nicht erreicht.
apart-epaulette-swallow-tail = Beim Schwalbenschwanzmatt steht die Dame neben dem König, und seine eigenen Steine stehen schräg hinter ihm. Beim Epaulettenmatt steht er am Rand, die Steine neben ihm, und das Schach kommt aus der Entfernung.
apart-greco-morphy = Der König steht bei beiden in der Ecke, gegen ihn ein Läufer. Bei Grecos Matt geben Turm oder Dame auf der Randlinie Schach; bei Morphys Matt gibt es der Läufer auf der langen Diagonale.
apart-hook-vukovic = Beim Hakenmatt steht der Springer neben dem König und deckt den Turm. Bei Vukovićs Matt steht er hinter dem Turm und nimmt die Felder links und rechts vom König.
apart-kiss-lolli = Bei Lollis Matt deckt ein Bauer die Dame vor dem rochierten König. Wo eine andere Figur sie deckt und kein anderer Name passt, ist es ein Damenkuss.
apart-kiss-swallow-tail = Beim Schwalbenschwanzmatt stehen eigene Steine auf den beiden Feldern hinter dem König, die die Dame nicht erreicht. Beim einfachen Damenkuss nimmt mindestens eines dieser Felder eine andere Figur, oder es läge jenseits des Randes.
apart-lolli-max-lange = Bei Lollis Matt kommt die Dame von vorn, und ein Bauer deckt sie. Bei Max Langes Matt kommt sie von hinten, auf der Grundreihe des Königs, und ein Läufer neben ihr deckt sie.
apart-mayet-opera = Ein Läufer deckt bei beiden den Turm und nimmt das Feld vor dem König. Bei Mayets Matt steht der Turm in der Ecke; beim Opernmatt nicht, und dem König stehen eigene Steine im Weg.
apart-morphy-pillsbury = Turm und Läufer tauschen die Rollen: Bei Morphys Matt gibt der Läufer Schach, und der Turm nimmt die Linie neben dem König; bei Pillsburys Matt gibt der Turm Schach, und der Läufer nimmt das Eckfeld.
apart-smothered-suffocation = Beim erstickten Matt ist kein Feld zu nehmen: Auf allen stehen eigene Steine des Königs. Beim Erstickungsmatt mit Läufer nimmt ein Läufer die Felder, die sie frei lassen.

## Die Teile einer Karte

card-what-to-look-for = Worauf zu achten ist
card-relatives = Leicht damit zu verwechseln
card-example = Beispiel
card-source = { $source ->
    [renaud-kahn] Name und Bild: Renaud und Kahn, „The Art of the Checkmate“. Die Worte und das Beispiel sind unsere eigenen.
    [vukovic] Name und Bild: Vuković, „The Art of Attack in Chess“. Die Worte und das Beispiel sind unsere eigenen.
   *[trade] Name und Bild sind unter Spielern und Trainern gebräuchlich. Die Worte und das Beispiel sind unsere eigenen.
}
card-by-coach = Von deinem Trainer geschrieben.
card-example-solved = Beispiel: { $line }
card-to-read = { $definition }

    Worauf zu achten ist: { $look }
