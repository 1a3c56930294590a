//! The bibliography: every document a number or a formula comes from, and how the value reached us.

/// A published document, or a plain statement that there is none.
#[derive(Debug, PartialEq)]
pub struct Source {
    /// Short name shown beside a number.
    pub name: &'static str,
    /// What the document is.
    pub title: &'static str,
    /// Edition or year used here.
    pub edition: &'static str,
}

/// How a value or a formula reached this project.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Obtained {
    /// The printed text was read.
    Read,
    /// Read in a copy or a reprint, not in the document itself; a typing error cannot be excluded.
    Copied,
    /// Written down from memory and not yet compared with the document.
    Memory,
    /// Worked out here from other values that carry their own source.
    Computed,
    /// What builders do. Nobody has published it.
    Practice,
    /// Our own choice, open to change.
    Assumption,
}

impl Obtained {
    /// The words shown on screen after a source.
    pub const fn words(self) -> &'static str {
        match self {
            Self::Read => "read in the document",
            Self::Copied => "read in a copy",
            Self::Memory => "from memory",
            Self::Computed => "worked out here",
            Self::Practice => "common practice, no source",
            Self::Assumption => "assumption",
        }
    }
}

/// A place in a source.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Cite {
    /// The document.
    pub source: &'static Source,
    /// Table, equation, page or section.
    pub place: &'static str,
    /// How the value was obtained.
    pub obtained: Obtained,
}

/// Makes a [`Cite`] in a table row.
pub const fn cite(source: &'static Source, place: &'static str, obtained: Obtained) -> Cite {
    Cite { source, place, obtained }
}

impl Cite {
    /// One line for the screen: name, place, edition and how it was obtained.
    pub fn words(&self) -> String {
        let mut out = String::from(self.source.name);
        for part in [self.place, self.source.edition] {
            if !part.is_empty() {
                out.push_str(", ");
                out.push_str(part);
            }
        }
        if self.source.name != self.obtained.words() && self.obtained != Obtained::Read {
            out.push_str(" (");
            out.push_str(self.obtained.words());
            out.push(')');
        }
        out
    }

    /// The same as a sentence of its own.
    pub fn sentence(&self) -> String {
        let words = self.words();
        let mut letters = words.chars();
        let first = letters.next().map(|first| first.to_uppercase().to_string()).unwrap_or_default();
        format!("{first}{}.", letters.as_str())
    }
}

macro_rules! sources {
    ($($(#[doc = $doc:literal])* $id:ident = $name:literal, $title:literal, $edition:literal;)*) => {
        $($(#[doc = $doc])* pub static $id: Source = Source { name: $name, title: $title, edition: $edition };)*
        /// Every source, in the order of this file.
        pub static ALL: &[&Source] = &[$(&$id),*];
    };
}

sources! {
    /// Unified inch screw threads.
    ASME_B1_1 = "ASME B1.1", "Unified Inch Screw Threads (UN and UNR Thread Form)", "2003";
    /// Metric thread tolerances.
    ISO_965_1 = "ISO 965-1", "ISO general purpose metric screw threads: tolerances, principles and basic data", "1998";
    /// Metric basic dimensions.
    ISO_724 = "ISO 724", "ISO general purpose metric screw threads: basic dimensions", "1993";
    /// Metric bolts and stress areas.
    ISO_898_1 = "ISO 898-1", "Mechanical properties of fasteners made of carbon steel and alloy steel", "2009";
    /// Inch hex nuts and jam nuts.
    ASME_B18_2_2 = "ASME B18.2.2", "Nuts for General Applications: machine screw nuts, hex, square", "2015";
    /// Metric thin nuts.
    ISO_4035 = "ISO 4035", "Hexagon thin nuts chamfered (style 0)", "2012";
    /// Thread strength of screws.
    FED_STD_H28 = "FED-STD-H28/2B", "Screw-Thread Standards for Federal Services, unified threads, appendix on length of engagement", "1991";
    /// Fastener design manual.
    NASA_RP_1228 = "NASA RP-1228", "Fastener Design Manual", "1990";
    /// Strength of aerospace metals, public domain.
    MIL_HDBK_5J = "MIL-HDBK-5J", "Metallic Materials and Elements for Aerospace Vehicle Structures", "2003";
    /// Welded and drawn steel tube.
    ASTM_A513 = "ASTM A513", "Electric-Resistance-Welded Carbon and Alloy Steel Mechanical Tubing, reprint of the tensile table", "";
    /// Inch bolts.
    SAE_J429 = "SAE J429", "Mechanical and Material Requirements for Externally Threaded Fasteners", "reprinted in Shigley 9e";
    /// Wide male rod ends.
    SAE_AS81935_1 = "SAE AS81935/1A", "Bearings, plain, rod end, wide, externally threaded", "public preview";
    /// Narrow male rod ends.
    SAE_AS81935_4 = "SAE AS81935/4B", "Bearings, plain, rod end, narrow, externally threaded", "public preview";
    /// Metric rod ends.
    ISO_12240_4 = "ISO 12240-4", "Spherical plain bearings: spherical plain bearing rod ends, series K", "table in an open CAD library";
    /// Design of machine elements.
    SHIGLEY = "Shigley", "Shigley's Mechanical Engineering Design", "9th edition";
    /// Machinery's Handbook, newest read.
    MH31 = "Machinery's Handbook", "Machinery's Handbook", "31st edition";
    /// Machinery's Handbook, older table.
    MH27 = "Machinery's Handbook 27", "Machinery's Handbook", "27th edition";
    /// Theory of elastic stability.
    TIMOSHENKO_GERE = "Timoshenko and Gere", "Theory of Elastic Stability", "2nd edition";
    /// Strength of materials: impact on beams.
    TIMOSHENKO = "Timoshenko", "Strength of Materials", "3rd edition";
    /// Strength of materials: falling weights.
    GERE_GOODNO = "Gere and Goodno", "Mechanics of Materials", "7th edition";
    /// Struts that are not straight.
    CASE_CHILVER_ROSS = "Case, Chilver and Ross", "Strength of Materials and Structures", "";
    /// Steel structures.
    AISC_360 = "AISC 360", "Specification for Structural Steel Buildings", "2016";
    /// Exact conversion factors.
    NIST_SP_811 = "NIST SP 811", "Guide for the Use of the International System of Units", "2008";
    /// Shop training.
    NAVEDTRA_14345 = "NAVEDTRA 14345", "US Navy training manual on machine shop work", "";
    /// Tap chamfers and drill points.
    TM_9_254 = "TM 9-254", "US Army manual: general maintenance procedures, taps", "";
    /// Working of aerospace metals.
    TO_1_1A_9 = "T.O. 1-1A-9", "US Air Force technical order, also Army TM 43-0106: aerospace metals, general data and usage factors", "";
    /// Turning speeds of steels.
    FERROUS_DATA = "The Ferrous Metals Data Book", "Carbon and alloy steels, machining data, chapter 9, as a steel dealer reprints it", "";
    /// Speeds of countersinks.
    SHOP_COURSE = "university shop course", "Speeds and feeds, notes of a university's design and manufacturing laboratory, as a tool dealer reprints them", "";
    /// Chamfers of taps by letter.
    DIN_2197 = "DIN 2197", "Chamfers of taps, forms A to F, as tap catalogs print them", "";
    /// Torques of thin nuts.
    AC_43_13 = "AC 43.13-1B", "Acceptable Methods, Techniques, and Practices: aircraft inspection and repair", "1998";
    /// Torques of inch bolts.
    IFI_GUIDE = "IFI torque guide", "Tightening torque guide for SAE J429 Grade 5 and Grade 8 bolts, after IFI technical data N-12", "5th edition, as a fastener seller reprints it";
    /// Torques of metric bolts.
    SAE_J1701M = "SAE J1701M", "Torque-Tension Reference Guide for Metric Threaded Fasteners", "1996, as a machine's manual reprints it";
    /// Rechecking jam nuts.
    LINK_NOTICE = "notice of a maker of links", "Owner's notice on rechecking jam nuts", "";
    /// Limits of worn joints.
    SERVICE_MANUAL = "service manual", "Inspection limits of a vehicle maker's service manual", "";
    /// Plane geometry and statics anybody can redo.
    GEOMETRY = "geometry", "Plane geometry, derived here", "";
    /// Rigid-body statics anybody can redo.
    STATICS = "statics", "Equilibrium of a rigid body, derived here", "";
    /// What builders do.
    PRACTICE = "common practice, no source", "Habits of builders; nobody has published them", "";
    /// Our own choice.
    OURS = "assumption", "A choice made for this tool, open to change", "";
    /// Metric tap drills.
    ISO_2306 = "ISO 2306", "Drills for use prior to tapping screw threads", "";
    /// Letter drills.
    ASME_B94_11M = "ASME B94.11M", "Twist Drills", "";
    /// Metric drills.
    BS_328 = "BS 328", "Drills and reamers: sizes of twist drills, as an encyclopedia tells them", "";
}
