//! Turkish words.

use shakmaty::{
    CastlingSide,
    Role::{Bishop, King, Knight, Pawn, Queen, Rook},
};

use super::{Entry, Word::*};

pub(super) const WORDS: &[Entry] = &[
    (Man(King), "şahım | şah | şahı | şahla"),
    (Man(Queen), "vezirim | vezire | vezir | veziri | vezirle"),
    (Man(Rook), "kalem | kaleye | kale | kaleyi | kaleyle"),
    (Man(Bishop), "filim | file | fil | fili | fille"),
    (Man(Knight), "atım | ata | at | atı | atla"),
    (Man(Pawn), "piyonum | er | piyon | piyonu | piyonla"),
    (
        Takes,
        "al | alma | almak | alıyorum | alırsa | yerim | yiyor | alır | alıyor | yer | alırım",
    ),
    (To, "git | oyna | gidiyor | ye | gider | oynar"),
    (Check, "şah çeker"),
    (Mate, "şahmat | mat | şah mat | ve mat | mat olur"),
    (Castles(None), "rok"),
    (Wing(CastlingSide::KingSide), "küçük | kısa"),
    (Wing(CastlingSide::QueenSide), "büyük | uzun"),
    (Promotes, "çıkar | çıkarım | yap | yaparım | terfi | olur"),
    (EnPassant, "geçerken | geçerken alma"),
    (Any, "herhangi | fark etmez | ne olursa olsun"),
    (Or, "yoksa | veya | ya da | yahut"),
    (If, "eğer"),
    (
        Then,
        "sonra | ve | ardından | daha sonra | ve sonra | sonrasında | şimdi",
    ),
    (No, "hayır | yok | yok yok"),
    (Unlike, "değil | yerine | yerine hemen"),
    (
        TakesBack,
        "olacaktı | olmalıydı | bekle | dur | pardon | özür dilerim | özür | düzeltme | düzeltiyorum | demek istedim | demek istediğim | yani | yanlış yazdım | daha doğrusu | yazım hatası | hayır bekle | edit | affedersin | düzelttim | aslında | pardon hayır | vazgeçtim",
    ),
    (But, "ama | fakat | ancak | lakin"),
    (
        Former,
        "düşündüm | ilk düşüncem | ilk fikrim | düşünmüştüm | istedim | oynamak istedim | önce düşündüm | aklıma geldi | denedim | cazip | başta | ilk aklıma gelen | yazdım | düşünüyordum",
    ),
    (Seems, "görünüyor | gibi | gözüküyor"),
    (
        Hedge,
        "kararsızım | arasında kaldım | muhtemelen | belki | galiba | emin değilim | olabilir | bilmiyorum | sanırım emin değilim | tahminim | fikrim yok | herhalde",
    ),
    (
        Fails,
        "yanlış | kaybeder | kötü | hata | çalışmaz | çalışmıyor | işe yaramaz | işe yaramıyor | olmaz | olmuyor | kazanmaz | kazanmıyor | mat değil | mat etmez | mat etmiyor | yetmez | ve hiçbir şey | çok yavaş | kaçar | kaçıyor | sadece beraberlik | iyi değil | doğru değil | yürümez | başarısız | erken",
    ),
    (Works, "çalışır | kazanır | işe yarar | siyah kaybeder"),
    (First, "ama önce | fakat önce"),
    (
        Better,
        "daha iyi | doğru | doğrusu | daha güçlü | önce gelir | çözüm budur | en iyisi | doğru hamle | daha iyidir",
    ),
    (Because, "çünkü | yüzünden | nedeniyle | zira"),
    (
        So,
        "bu yüzden | o yüzden | öyleyse | dolayısıyla | o halde | bu nedenle",
    ),
    (Claim, "oynarım | oynuyorum | hamlem | seçiyorum"),
    (Answer, "cevap | cevabım | çözüm | anahtar | yanıt"),
    (Quits, "pes | pes ediyorum"),
    (Else, "diğer her şey | diğer hamleler | gerisi"),
    (
        Aside,
        "dün | parti | hafta | turnuva | rakip | kulüp | o | kaybettim | oynadım | benzer",
    ),
    (
        Asks,
        "neden | nasıl | ne | kim | hangi | niye | neden olmasın | ya | peki ya | ne olur | sonra ne olur",
    ),
    (Tag, "mi | mı | mu | mü | olur mu | acaba | değil mi"),
    (
        Filler,
        "ile | i | ben | benim | bu | bir | teşekkürler | merhaba | selam | evet | önce | hemen | bence | sanırım | güzel | lütfen | kolay | hoca | hocam | hadi | al bakalım | çok | de | da | beyaz | siyah | feda | çifte | açmaz | artık | sadece | ilk | tamam | bitti | buldum | çözdüm | daha",
    ),
];
