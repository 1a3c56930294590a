//! Invented lists and prices to try things with; every row says so in its name.

use super::{Kind, Lists, read};

const ROD_ENDS: &str = "\
Name,Shank thread,Bore (in),Eye center to shank end (in),Thread length (in),Right-hand in stock,Left-hand in stock,Ball width (in),Head diameter (in),Head thickness (in),Static radial rating (lbf),Shank steel,Spacer on each side (in),Weight each (lb),Price each
\"Demo, 3/4 shank\",3/4-16 UNF,0.75,2.95,1.75,8,8,0.875,1.75,0.64,28000,Heat-treated alloy,,1.1,31.50
\"Demo, 7/8 shank\",7/8-14 UNF,0.75,3.4,2.05,6,5,0.875,2,0.765,36000,Heat-treated alloy,,1.6,38.25
\"Demo, 1-1/4 shank\",1-1/4-12 UNF,1,4.2,2.45,12,10,1.375,2.75,1.02,70000,Heat-treated alloy,,3.4,64.00
\"Demo, 1-1/4 shank, steel not known\",1-1/4-12 UNF,1,4.1,2.3,4,0,1.375,2.7,1,,Not known,,3.3,41.00
";

const BARS: &str = "\
Name,Metal,Outside diameter (in),Length (in),In stock,Kind,Price,Price per
Demo 1-3/4 bar,7075-T6/T651 bar,1.75,144,2,Full length,11.40,ft
Demo 2 bar,7075-T6/T651 bar,2,144,3,Full length,14.75,ft
Demo 2-1/4 bar,7075-T6/T651 bar,2.25,144,1,Full length,18.60,ft
Demo 2-1/2 bar,7075-T6/T651 bar,2.5,144,2,Full length,23.10,ft
Demo remnant,7075-T6/T651 bar,2,41.5,1,Remnant,14.75,ft
";

const TUBES: &str = "\
Name,Metal,Outside diameter (in),Wall (in),Length (in),In stock,Kind,Price,Price per
Demo 1-3/4 tube,1020 DOM tube,1.75,0.25,240,2,Full length,9.80,ft
Demo 2 tube,1020 DOM tube,2,0.25,240,2,Full length,11.90,ft
";

const INSERTS: &str = "\
Name,Thread,Hand,Outside diameter (in),Length (in),In stock,Price each
Demo insert RH,3/4-16 UNF,Right-hand,1.25,1.875,8,12.00
Demo insert LH,3/4-16 UNF,Left-hand,1.25,1.875,8,13.00
";

const NUTS: &str = "\
Name,Thread,Hand,Thickness (in),Across flats (in),In stock,Price each
Demo nut RH,1-1/4-12 UNF,Right-hand,0.719,1.875,20,4.10
Demo nut LH,1-1/4-12 UNF,Left-hand,0.719,1.875,20,4.60
Demo nut 7/8 RH,7/8-14 UNF,Right-hand,0.484,1.312,12,2.80
Demo nut 7/8 LH,7/8-14 UNF,Left-hand,0.484,1.312,12,3.10
";

const PRICES: &str = "\
Name,Charge,Metal,Outside diameter (in),Wall (in),Thread,Price,Per,From links,Percent,Days
Demo 7075 bar of 2,Material,7075-T6/T651 bar,2,,,1.85,in,,,
\"Demo 7075 bar, any size\",Material,7075-T6/T651 bar,,,,11.50,lb,,,
\"Demo DOM tube, any size\",Material,1020 DOM tube,,,,1.35,in,,,
Demo saw cut,Saw,,,,,4.00,piece,,,
Demo facing,Face,,,,,3.50,end,,,
Demo drill and tap,Drill and tap,,,,,16.00,end,,,
Demo drill and tap 1-1/4,Drill and tap,,,,1-1/4-12 UNF,22.50,end,,,
Demo wrench flats,Mill flats,,,,,9.00,piece,,,
Demo skim,Skim pass,,,,,0.335,in,,,
Demo weld,Weld insert,,,,,18.00,end,,,
Demo set-up,Set up,,,,,35.00,order,,,
Demo polish,Polish,,,,,0.45,in,,,
Demo anodize,Anodize,,,,,14.00,piece,,,8
Demo jam nut,Jam nut,,,,,5.25,piece,,,
Demo bolt,Bolt,,,,,7.40,piece,,,
Demo lock nut,Lock nut,,,,,2.10,piece,,,
Demo spacer,Spacer,,,,,6.00,piece,,,
Demo order,Each order,,,,,12.00,order,,,
Demo packing,Packing,,,,,8.50,order,,,
Demo shipping,Shipping,,,,,0.95,lb,,,
Demo least order,Least order,,,,,75.00,order,,,
Demo four and more,Quantity break,,,,,,,4,5,
Demo eight and more,Quantity break,,,,,,,8,7.5,
Demo tax,Tax without shipping,,,,,,,,8.25,
Demo lead time,Lead time,,,,,,,,,5
";

/// The text of an invented list, as a file would hold it.
pub const fn text(kind: Kind) -> &'static str {
    match kind {
        Kind::RodEnds => ROD_ENDS,
        Kind::Bars => BARS,
        Kind::Tubes => TUBES,
        Kind::Inserts => INSERTS,
        Kind::Nuts => NUTS,
        Kind::Prices => PRICES,
    }
}

/// Invented lists, to see what they are for.
pub fn lists() -> Lists {
    let mut lists = Lists::default();
    for kind in Kind::ALL {
        // Tests hold that each is read without a complaint.
        let _ = read(&mut lists, kind, text(kind));
    }
    lists
}
