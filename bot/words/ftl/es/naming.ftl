# Lo que se dice de un mate en el tablero, y lo que define cada patrón.

no-mate = No es mate: quien juega todavía tiene una jugada o no está en jaque.
mate-unnamed = Mate, pero de ningún patrón con nombre.
mate-named = { $pattern }.
mate-named-also = { $pattern }, y además: { $others }.
checks-king = Da jaque { $piece-the } de { $on }.
checks-king-and-guards = Da jaque { $piece-the } de { $on }, que quita al rey { $flights }.
guards-flights = Además, { $piece-the } de { $on } controla { $flights }.
own-men-block = { $number ->
    [one] Una pieza propia bloquea { $squares }.
   *[other] Las piezas propias bloquean { $squares }.
}

## Por el nombre del patrón

definition-arabian = Una torre da mate al rey en la esquina desde la casilla del borde que está a su lado. Un caballo, a dos casillas en la diagonal de la esquina, defiende la torre y quita el último escape.
definition-anastasia = Una torre o una dama da mate por el borde. En la línea de al lado una pieza propia estorba al rey, y un caballo, dos casillas más allá de esa pieza, controla las demás casillas de la línea.
definition-hook = Una torre da mate desde la casilla contigua al rey. Un caballo junto al rey defiende la torre, un peón defiende el caballo y una pieza propia bloquea al rey.
definition-vukovic = El rey está en el borde; la torre, defendida delante de él, da mate, y el caballo justo detrás de la torre quita las casillas a ambos lados del rey.
definition-boden = Dos alfiles dan mate en diagonales que se cruzan: uno da jaque, el otro quita los escapes que quedan y las piezas propias del rey bloquean el resto.
definition-balestra = Un alfil da mate a distancia y la dama sola quita los dos o más escapes que él deja.
definition-legal = Dos caballos y un alfil, los tres necesarios y nadie más, dan mate a un rey que apenas ha salido de casa y está encerrado por sus propias piezas.
definition-blackburne = Un alfil da mate desde la casilla en diagonal delante del rey, defendido por un caballo, mientras el otro alfil barre las casillas de al lado.
definition-reti = Un alfil da mate desde la casilla contigua al rey, defendido por una torre o dama en su línea, mientras cuatro o más piezas propias estorban al rey.
definition-greco = Una torre o una dama da mate al rey arrinconado por la columna del borde. Un alfil quita la casilla de al lado en la primera fila, y una pieza propia bloquea la casilla intermedia.
definition-morphy = Un alfil da mate al rey arrinconado por la diagonal larga. Una torre quita la columna de al lado, y delante del rey hay una pieza propia.
definition-pillsbury = Una torre da mate por la columna del rey enrocado, y un alfil quita la esquina de al lado, donde una pieza propia no deja otra salida.
definition-opera = Una torre da mate en la primera fila, junto al rey. Un alfil la defiende y en la misma diagonal quita la casilla delante del rey; las piezas propias hacen el resto.
definition-mayet = Una torre da mate en la esquina junto al rey enrocado, defendida desde lejos por un alfil que también quita la casilla delante del rey.
definition-anderssen = Una torre o una dama da mate en la esquina junto al rey enrocado, defendida por un peón o alfil que está seguro delante del rey.
definition-blind-swine = Dos torres en la segunda fila, contada desde el rey: una da mate delante del rey, la otra la defiende.
definition-smothered = Un caballo da mate a un rey que no puede moverse en absoluto, porque en todas las casillas a su alrededor hay piezas propias.
definition-suffocation = Un caballo da mate al rey en el borde, un alfil quita los escapes que le dejan sus propias piezas, y estas bloquean el resto.
definition-corner = Un caballo da mate al rey en la esquina. Una torre o una dama quita la línea de al lado, y una pieza propia bloquea el otro lado.
definition-damiano = La dama da mate en diagonal delante del rey que está en su primera fila, defendida por un peón dos casillas justo delante de él, que también quita la salida del otro lado.
definition-lolli = La dama irrumpe en el enroque y da mate delante del rey, defendida por un peón que ha llegado hasta su tercera fila.
definition-max-lange = El rey ha subido junto a la esquina. La dama da mate desde detrás, en su primera fila, defendida por un alfil a su lado que también quita la salida.
definition-dovetail = La dama da mate en diagonal junto al rey. Las dos únicas casillas a su alrededor que ella no alcanza las ocupan piezas propias. También se llama mate de Cozio.
definition-swallow-tail = La dama da mate cara a cara con el rey. Las dos únicas casillas a su alrededor que ella no alcanza, detrás de él a izquierda y derecha, las ocupan piezas propias. También se llama guéridon.
definition-epaulette = El rey en el borde tiene piezas propias en ambos hombros y recibe mate de frente, a distancia, de una dama o una torre.
definition-double-bishop = Dos alfiles dan mate uno al lado del otro en diagonales paralelas: uno da jaque, el otro quita el escape que queda y las piezas propias del rey bloquean el resto.
definition-ladder = Dos piezas mayores en líneas vecinas: una da jaque al rey a lo largo del borde, la otra quita toda la línea de al lado.
definition-back-rank = Una torre o una dama da mate por la primera fila del rey, porque sus propias piezas delante no le dejan salida: como mucho una de esas casillas está libre de ellas, y esa está controlada.
definition-corridor = Una torre o una dama da mate por una columna o una fila que no es la primera del rey. A cada lado el borde o las piezas propias cierran el corredor: como mucho una casilla de un lado está libre de ellas, y esa está controlada.
definition-kiss = La dama da mate desde la casilla contigua al rey, defendida por otra pieza.
definition-double-check = Dos piezas dan jaque a la vez, y el rey, el único que podría responder, no tiene casilla.
definition-pawn = El jaque mate lo da un peón.
