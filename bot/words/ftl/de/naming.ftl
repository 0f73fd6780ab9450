# Was von einem Matt auf dem Brett gesagt wird, und was ein Mattbild ausmacht.

no-mate = Das ist kein Matt: Wer am Zug ist, hat noch einen Zug oder steht nicht im Schach.
mate-unnamed = Matt, aber kein Mattbild mit Namen.
mate-named = { $pattern }.
mate-named-also = { $pattern }, außerdem: { $others }.
checks-king = Schach gibt { $piece-nom } auf { $on }.
checks-king-and-guards = Schach gibt { $piece-nom } auf { $on } und nimmt dem König { $flights }.
guards-flights = Den Weg nach { $flights } nimmt ihm { $piece-nom } auf { $on }.
own-men-block = { $number ->
    [one] Ein eigener Stein verstellt dem König { $squares }.
   *[other] Eigene Steine verstellen dem König { $squares }.
}

## Nach dem Namen des Mattbilds

definition-arabian = Ein Turm setzt den König in der Ecke vom Randfeld neben ihm matt. Ein Springer, der zwei Felder weit auf der Eckdiagonale steht, deckt den Turm und nimmt das letzte Fluchtfeld.
definition-anastasia = Ein Turm oder eine Dame setzt am Rand matt. Auf der Linie daneben steht dem König ein eigener Stein im Weg, und ein Springer, zwei Felder hinter diesem Stein, deckt die anderen Felder der Linie.
definition-hook = Ein Turm setzt vom Feld neben dem König matt. Ein Springer neben dem König deckt den Turm, ein Bauer deckt den Springer, und ein eigener Stein verstellt dem König den Weg.
definition-vukovic = Der König steht am Rand; der Turm steht gedeckt vor ihm und setzt matt, und der Springer direkt hinter dem Turm nimmt die Felder zu beiden Seiten des Königs.
definition-boden = Zwei Läufer setzen auf gekreuzten Diagonalen matt: Einer gibt Schach, der andere nimmt die übrigen Fluchtfelder, und den Rest verstellen die eigenen Steine des Königs.
definition-balestra = Ein Läufer setzt aus der Entfernung matt, und die Dame allein nimmt die zwei oder mehr Fluchtfelder, die er lässt.
definition-legal = Zwei Springer und ein Läufer, alle drei nötig und sonst niemand, setzen einen König matt, der kaum von zu Hause weggekommen ist und von eigenen Steinen eingeengt wird.
definition-blackburne = Ein Läufer setzt vom Feld schräg vor dem König matt, gedeckt von einem Springer, während der andere Läufer die Felder daneben bestreicht.
definition-reti = Ein Läufer setzt vom Feld neben dem König matt, auf seiner Linie gedeckt von Turm oder Dame, während vier oder mehr eigene Steine dem König im Weg stehen.
definition-greco = Ein Turm oder eine Dame setzt den König in der Ecke auf der Randlinie matt. Ein Läufer nimmt das Feld neben ihm auf der Grundreihe, und ein eigener Stein verstellt das Feld dazwischen.
definition-morphy = Ein Läufer setzt den König in der Ecke auf der langen Diagonale matt. Ein Turm nimmt die Linie daneben, und vor dem König steht ein eigener Stein.
definition-pillsbury = Ein Turm setzt auf der Linie des rochierten Königs matt, und ein Läufer nimmt das Eckfeld daneben, wo ein eigener Stein keinen anderen Ausweg lässt.
definition-opera = Ein Turm setzt auf der Grundreihe direkt neben dem König matt. Ein Läufer deckt ihn und nimmt auf derselben Diagonale das Feld vor dem König; den Rest erledigen die eigenen Steine.
definition-mayet = Ein Turm setzt in der Ecke neben dem rochierten König matt, aus der Ferne gedeckt von einem Läufer, der auch das Feld vor dem König nimmt.
definition-anderssen = Ein Turm oder eine Dame setzt in der Ecke neben dem rochierten König matt, gedeckt von einem Bauern oder Läufer, der sicher vor dem König steht.
definition-blind-swine = Zwei Türme auf der zweiten Reihe, vom König aus gezählt: Einer setzt vor dem König matt, der andere deckt ihn.
definition-smothered = Ein Springer setzt einen König matt, der sich gar nicht bewegen kann, weil auf allen Feldern um ihn herum eigene Steine stehen.
definition-suffocation = Ein Springer setzt den König am Rand matt; ein Läufer nimmt die Fluchtfelder, die ihm die eigenen Steine lassen, und diese verstellen den Rest.
definition-corner = Ein Springer setzt den König in der Ecke matt. Ein Turm oder eine Dame nimmt die Linie daneben, und die andere Seite verstellt ein eigener Stein.
definition-damiano = Die Dame setzt schräg vor dem König auf seiner Grundreihe matt, gedeckt von einem Bauern, der zwei Felder genau vor dem König steht und auch den Ausweg auf der anderen Seite nimmt.
definition-lolli = Die Dame dringt in die Rochadestellung ein und setzt vor dem König matt, gedeckt von einem Bauern, der bis auf dessen dritte Reihe vorgedrungen ist.
definition-max-lange = Der König ist neben der Ecke hochgegangen. Die Dame setzt hinter ihm auf seiner Grundreihe matt, gedeckt von einem Läufer neben ihr, der auch den Ausweg nimmt.
definition-dovetail = Die Dame setzt schräg neben dem König matt. Auf den beiden einzigen Feldern um ihn, die sie nicht erreicht, stehen eigene Steine. Heißt auch Cozios Matt.
definition-swallow-tail = Die Dame setzt Auge in Auge mit dem König matt. Auf den beiden einzigen Feldern um ihn, die sie nicht erreicht, schräg hinter ihm links und rechts, stehen eigene Steine. Heißt auch Guéridon.
definition-epaulette = Der König am Rand hat auf beiden Schultern eigene Steine und wird von einer Dame oder einem Turm genau von vorn aus der Entfernung mattgesetzt.
definition-double-bishop = Zwei Läufer setzen nebeneinander auf parallelen Diagonalen matt: Einer gibt Schach, der andere nimmt das Fluchtfeld, das bleibt, und den Rest verstellen die eigenen Steine des Königs.
definition-ladder = Zwei Schwerfiguren auf benachbarten Linien: Eine gibt dem König am Rand Schach, die andere nimmt die ganze Linie daneben.
definition-back-rank = Ein Turm oder eine Dame setzt auf der Grundreihe des Königs matt, weil ihm die eigenen Steine vor ihm keinen Weg nach oben lassen: Höchstens eines dieser Felder ist frei von ihnen, und das ist gedeckt.
definition-corridor = Ein Turm oder eine Dame setzt auf einer Linie oder Reihe matt, die nicht die Grundreihe des Königs ist. Zu beiden Seiten schließen der Rand oder eigene Steine den Korridor: Höchstens ein Feld jeder Seite ist frei von ihnen, und das ist gedeckt.
definition-kiss = Die Dame setzt vom Feld neben dem König matt, gedeckt von einer anderen Figur.
definition-double-check = Zwei Figuren geben zugleich Schach, und der König, der allein antworten könnte, hat kein Feld.
definition-pawn = Das mattsetzende Schach gibt ein Bauer.
