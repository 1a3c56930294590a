mod links;
use linkwright::engine::{report, sentence::spoken};
use linkwright::quantity::*;
use linkwright::share::from_fragment;
#[test]
fn probe() {
    for l in [
        "2&length=24in&weight=2000lb&od=2in&own-f.b=1.5in&own-t.b=0.52in&own-bore.b=0.75in&rounding=0.25in&role=upper&use=easy&rod-end.a=wide-12&rod-end.b=mine&own-thread.b=3/4-16&crc=ed2ce8e5",
        "2&length=32.58in&weight=2500lb&od=2in&visible=1.5&rounding=0.5in&role=upper&use=easy&rod-end.a=wide-16&rod-end.b=wide-12&crc=11738bda",
    ] {
        let o = from_fragment(l);
        println!("told {:?} recalculated {}", o.told, o.recalculated);
        match &report(&o.document).links[0] {
            linkwright::report::LinkReport::Answer(a) => {
                for e in &a.link.ends {
                    println!(
                        "eng {} least {} most {} vis {} stop {:?} reach {:?}",
                        e.engagement / INCH,
                        e.least / INCH,
                        e.most / INCH,
                        e.visible_threads,
                        e.stop,
                        e.reach
                    );
                }
                println!("{:?}", a.verdict);
                for f in &a.findings {
                    println!("{} {:?} {:?}: {}", f.id, f.verdict, f.utilization, spoken(&f.says, System::Inch));
                }
            }
            linkwright::report::LinkReport::Impossible(w) => println!("{}", spoken(w, System::Inch)),
            x => println!("{x:?}"),
        }
    }
}
