# Fichas de temas: lo que un entrenador dice de un patrón además de su definición (naming.ftl), y cómo se componen las fichas.

## En qué fijarse ante el tablero, por el nombre del patrón

look-arabian = Una torre en la séptima fila y un caballo que llega a la casilla situada a dos pasos en diagonal de la esquina. Pregúntate qué jaque de caballo lleva al rey a la esquina y si alguien puede capturar la torre a su lado.
look-anastasia = Un caballo en e7 contra un rey enrocado (o en d7, e2, d2) y un peón h que se puede arrancar. Mira si un sacrificio de dama en la columna del borde deja que una torre siga por ella.
look-hook = Un caballo al lado del rey con un peón que lo defiende. Busca una torre que llegue a la casilla que defiende el caballo; empieza por el jaque que obliga al rey a ponerse a su lado.
look-vukovic = Un rey en el borde y un caballo dos casillas delante de él. En la casilla de en medio da mate una torre, si algo más que el caballo la defiende allí.
look-boden = Un rey con enroque largo al que le falta el peón c, o se lo pueden desviar. Si un alfil ya barre las casillas de su lado, pregunta qué necesita el otro para llegar a la diagonal que la cruza; muchas veces es un sacrificio de dama en c3 o c6.
look-balestra = Un rey cuyos escapes están en dos líneas de la dama, por ejemplo una columna y una diagonal. Busca una casilla desde la que la dama los quite todos, y una diagonal en la que el alfil dé jaque después.
look-legal = El rey contrario en casa, un alfil que apunta a f7 o f2 y dos caballos cerca del centro. Cuando un caballo sale de la clavada aunque se pierda la dama, cuenta si bastan los jaques de las piezas menores.
look-blackburne = Los dos alfiles en diagonales largas hacia el rey enrocado y un caballo en g5 o g4. Busca una captura que abra el camino a h7 o h2; el caballo mantiene vivo al alfil allí.
look-reti = Un rey agobiado por sus propias piezas y un alfil con una torre o una dama detrás. Busca un jaque doble que le deje una sola casilla, junto a la cual pueda volver el alfil con la pieza pesada a su espalda.
look-greco = Un rey en la esquina con el peón g todavía delante, y tu alfil mirando la casilla de su lado. Todo depende de la columna h: ¿qué caballo o qué dama se puede entregar para abrirla?
look-morphy = Una torre en la columna junto al rey y un alfil detrás de una pieza contraria en la gran diagonal. Lleva al rey a la esquina con la torre y captura después lo que estorba al alfil.
look-pillsbury = La columna del rey enrocado está abierta y tu alfil ya quita la esquina. Decide una torre que llegue a esa columna con jaque; lo que se interponga se captura.
look-opera = El rey aún en el centro, tu alfil en la diagonal que quita la casilla delante de él y una torre en la columna abierta. Averigua quién defiende la casilla junto al rey y desvía esa pieza.
look-mayet = Tu alfil en la gran diagonal y la columna h abierta. Si puedes dar jaque al rey en esa columna, tiene que volver atrás, y la torre lo sigue hasta la esquina.
look-anderssen = Un peón o alfil tuyo que ha llegado a la casilla delante del rey enrocado y no se puede capturar. Pregunta entonces cómo llega la torre o la dama a la columna del borde.
look-blind-swine = Dos torres en la séptima fila contra un rey encerrado por su propia torre. Captura con jaque donde las torres se defienden una a otra y mira por qué lado ya no puede volver.
look-smothered = Un rey en la esquina con piezas propias por todas partes menos una. Un sacrificio de dama en esa casilla, defendido por el caballo, obliga a su torre a cerrarla; el caballo hace lo demás.
look-suffocation = Un alfil en la gran diagonal contra un rey enrocado sin peón g. Busca el jaque de caballo y comprueba antes si el propio caballo no tapa al alfil.
look-corner = Un rey en la esquina detrás de su peón h y una torre en la columna g. Mira dónde puede dar jaque un caballo y cómo se aleja a la única pieza que defiende esa casilla.
look-damiano = Un peón que ha llegado a la tercera fila delante del rey y una columna abierta en el borde. Lleva la dama allí con jaque: cuando esté junto al rey, la defenderá el peón.
look-lolli = Un peón en f6 o h6 (f3, h3 desde el otro lado) junto a un peón g debilitado. Si la dama llega a la casilla de al lado, mira si aún defiende algo la casilla delante del rey.
look-max-lange = El rey ha subido junto a la esquina y tu alfil está en la séptima fila, pegado a la primera. Lleva la dama detrás de él: el alfil la defiende y quita la salida.
look-dovetail = Un rey con dos piezas propias en ángulo recto entre sí. La casilla opuesta en diagonal es la de la dama; asegúrate de que algo la defienda allí.
look-swallow-tail = Un rey con dos piezas propias en diagonal detrás de él. Ponle la dama defendida cara a cara y no le queda nada.
look-epaulette = Un rey en el borde entre dos piezas propias. Busca la línea justo delante de él: la dama necesita allí una casilla segura, a dos pasos o más.
look-double-bishop = Dos alfiles en diagonales vecinas hacia un rey en la esquina. Si uno ya quita la casilla de su lado, cualquier jaque del otro por su línea larga puede ser mate.
look-ladder = Dos torres (o torre y dama) y un tablero abierto. Corta al rey en una línea y da jaque en la siguiente; cuida solo de que no pueda atacar a la más cercana.
look-back-rank = Un rey detrás de peones sin mover y una primera fila que defiende una sola pieza. Cuenta atacantes y defensores de la casilla donde quieres dar jaque; basta un atacante más, o un defensor que se pueda desviar.
look-corridor = Un rey en una línea cerrada por los dos lados, por el borde o por sus propias piezas. Busca una torre o una dama que pueda dar jaque por esa línea, y la única casilla que quizá siga libre.
look-kiss = Un rey con pocas casillas y, a su lado, una que atacas dos veces. La dama llega allí con jaque; pregunta cada vez quién la defiende.
look-double-check = Una torre o un alfil apunta al rey con un caballo u otra pieza tuya en medio. Si esa pieza se va también con jaque, ya no sirve capturar ni interponer: mira solo las casillas que le quedan al rey.
look-pawn = Un rey que ha salido al descubierto cerca de tus peones. Antes de traer otra pieza, mira si el próximo avance de un peón es jaque y quién quita las casillas de al lado.

## Qué separa a dos parientes, por sus nombres en orden alfabético

apart-anastasia-arabian = En el mate árabe la torre está junto al rey en la esquina, defendida por el caballo. En el de Anastasia el caballo no defiende nada: quita casillas de la línea de al lado, donde una pieza propia estorba al rey.
apart-anastasia-corridor = En el mate del corredor el borde o las piezas propias dejan al rey una casilla por lado como mucho. En el de Anastasia basta una pieza propia, porque el caballo quita las otras casillas de ese lado.
apart-anastasia-greco = En los dos el jaque llega por el borde. En el mate de Greco el rey está en la esquina y un alfil quita la casilla de su lado; en el de Anastasia un caballo quita las casillas de la línea de al lado.
apart-anastasia-hook = En el mate del gancho el caballo está junto al rey y defiende la torre. En el de Anastasia está a tres líneas de él y solo quita casillas.
apart-anderssen-mayet = En los dos el mate llega desde la esquina, al lado del rey enrocado. En el de Mayet un alfil defiende la torre desde lejos; en el de Anderssen el peón o alfil que la defiende está justo delante del rey.
apart-anderssen-opera = En el mate de la ópera la torre está junto al rey, pero no en la esquina, y la defiende un alfil por su diagonal. En el de Anderssen está en la esquina, y quien la defiende está justo delante del rey.
apart-anderssen-pawn = En el mate de Anderssen un peón puede defender la pieza que da jaque. En el mate de peón es el propio peón quien da el jaque.
apart-arabian-hook = En los dos un caballo defiende la torre. En el mate árabe está a dos casillas, en la diagonal de la esquina; en el del gancho toca al rey, y un peón tiene que defenderlo.
apart-arabian-vukovic = En el mate árabe el rey está en la esquina y el caballo defiende la torre. En el de Vuković no está en la esquina y el caballo está justo detrás de la torre, así que ha de defenderla otra pieza.
apart-back-rank-corridor = En la primera fila del rey es el mate del pasillo; en cualquier otra fila, o en una columna, es el mate del corredor.
apart-back-rank-ladder = En el mate del pasillo sus propias piezas no dejan al rey salir de la primera fila. En el de la escalera una segunda torre o dama le quita toda la línea siguiente.
apart-balestra-boden = En los dos un alfil da jaque a distancia. En el mate de Balestra la dama quita los demás escapes; en el de Boden lo hace un segundo alfil, en una diagonal que cruza la primera.
apart-balestra-max-lange = En los dos dan mate la dama y el alfil. En el de Balestra da jaque el alfil y la dama está lejos; en el de Max Lange la dama da jaque junto al rey y el alfil la defiende.
apart-blackburne-boden = En los dos hacen falta dos alfiles. En el mate de Boden el alfil da jaque a distancia y los dos no necesitan más ayuda; en el de Blackburne está junto al rey, y un caballo lo defiende allí.
apart-blackburne-legal = En el mate de Blackburne trabajan dos alfiles y un caballo que defiende al que da mate. En el de Légal son dos caballos y un alfil, y no sobra ninguno.
apart-blackburne-reti = En los dos un alfil da mate junto al rey. En el de Blackburne lo defiende un caballo; en el de Réti, una torre o una dama, y cuatro o más piezas propias estorban al rey.
apart-blind-swine-ladder = En el mate de los cerdos ciegos la torre que da jaque está justo delante del rey y la otra la defiende. En el de la escalera el jaque llega a distancia por el borde y la otra pieza quita la línea siguiente.
apart-boden-double-bishop = En el mate de Boden las diagonales de los dos alfiles se cruzan; en el mate con dos alfiles corren una junto a otra.
apart-corner-morphy = En los dos una pieza pesada quita la línea junto al rey en la esquina. En el mate en la esquina da jaque un caballo; en el de Morphy, un alfil por la gran diagonal.
apart-corner-smothered = En el mate de la coz hay piezas propias en todas las casillas alrededor del rey. En el mate en la esquina la línea de su lado está libre de ellas, y la quita una torre o una dama.
apart-corner-suffocation = En los dos da jaque un caballo. Lo que le queda al rey lo quita en el mate en la esquina una torre o una dama por una línea, y en el mate por asfixia un alfil por una diagonal.
apart-corridor-greco = El mate de Greco es un corredor especial: el rey en la esquina, el jaque por la columna del borde y un alfil sobre la única casilla que queda. Sin ese alfil es simplemente un mate del corredor.
apart-corridor-ladder = En el mate del corredor el borde o las piezas propias del rey cierran los dos lados de la línea. En el de la escalera una segunda torre o dama quita la línea de al lado.
apart-damiano-lolli = En los dos un peón defiende la dama. En el mate de Damiano el peón está justo delante del rey y la dama a un lado; en el de Lolli la dama está delante del rey y el peón a un lado.
apart-double-check-reti = Antes del mate de Réti suele venir un jaque doble, pero al final da jaque el alfil solo. En el mate por jaque doble es la última jugada la que da jaque dos veces.
apart-double-check-smothered = En el mate de la coz da jaque un caballo y hay piezas propias en todas las casillas alrededor del rey. En el mate por jaque doble lo dan dos piezas, y puede haber casillas sin piezas propias, pero no seguras.
apart-dovetail-kiss = En el mate de la cola de paloma hay piezas propias en las dos casillas junto al rey que la dama no alcanza. En un simple beso de la dama al menos una de esas casillas la quita otra pieza o queda fuera del tablero.
apart-dovetail-swallow-tail = En el mate de la cola de paloma la dama toca al rey en diagonal; en el de la cola de golondrina está cara a cara con él. Hay piezas propias en las dos casillas que desde allí no alcanza.
apart-epaulette-swallow-tail = En el mate de la cola de golondrina la dama está junto al rey y sus propias piezas en diagonal detrás de él. En el de las charreteras él está en el borde, las piezas a su lado, y el jaque llega a distancia.
apart-greco-morphy = En los dos el rey está en la esquina, con un alfil en contra. En el mate de Greco la torre o la dama da jaque por la columna del borde; en el de Morphy lo da el alfil por la gran diagonal.
apart-hook-vukovic = En el mate del gancho el caballo está junto al rey y defiende la torre. En el de Vuković está detrás de la torre y quita las casillas a la izquierda y a la derecha del rey.
apart-kiss-lolli = En el mate de Lolli un peón defiende la dama delante del rey enrocado. Donde la defiende otra pieza y no encaja otro nombre, es un beso de la dama.
apart-kiss-swallow-tail = En el mate de la cola de golondrina hay piezas propias en las dos casillas detrás del rey que la dama no alcanza. En un simple beso de la dama al menos una de esas casillas la quita otra pieza o queda fuera del tablero.
apart-lolli-max-lange = En el mate de Lolli la dama viene de frente y la defiende un peón. En el de Max Lange viene por detrás, por la primera fila del rey, y la defiende un alfil a su lado.
apart-mayet-opera = En los dos un alfil defiende la torre y quita la casilla delante del rey. En el mate de Mayet la torre está en la esquina; en el de la ópera no, y al rey le estorban sus propias piezas.
apart-morphy-pillsbury = La torre y el alfil cambian de papel: en el mate de Morphy da jaque el alfil y la torre quita la columna junto al rey; en el de Pillsbury da jaque la torre y el alfil quita la esquina.
apart-smothered-suffocation = En el mate de la coz no hay casilla que quitar: en todas hay piezas propias del rey. En el mate por asfixia un alfil quita las que ellas dejan.

## Las partes de una ficha

card-what-to-look-for = En qué fijarse
card-relatives = Fáciles de confundir con él
card-example = Ejemplo
card-source = { $source ->
    [renaud-kahn] Nombre e imagen: Renaud y Kahn, «The Art of the Checkmate». Las palabras y el ejemplo son nuestros.
    [vukovic] Nombre e imagen: Vuković, «The Art of Attack in Chess». Las palabras y el ejemplo son nuestros.
   *[trade] Nombre e imagen son de uso entre jugadores y entrenadores. Las palabras y el ejemplo son nuestros.
}
card-by-coach = Escrita por tu entrenador.
card-example-solved = Ejemplo: { $line }
card-to-read = { $definition }

    En qué fijarse: { $look }
