"""The sources that entries may name, with their full references: one table for the rule and for the page of claims."""

__all__ = ["BIBLIOGRAPHY", "CHECKERS", "COMMON"]

COMMON = "common practice"
"""The source of a fact of the trade that has none."""

CHECKERS = ("coach", "physiotherapist", "doctor", "biomechanist", "referee", "supplier")
"""Who could check a claim."""

BIBLIOGRAPHY: dict[str, str] = {
    "Akkus 2012": (
        "H. Akkus, Kinematic analysis of the snatch lift with elite female weightlifters during the 2010 World "
        "Weightlifting Championship, Journal of Strength and Conditioning Research 26(4), 2012"
    ),
    "Baumann 1988": (
        "W. Baumann, V. Gross, K. Quade, P. Galbierz, A. Schwirtz, The snatch technique of world class "
        "weightlifters at the 1985 World Championships, International Journal of Sport Biomechanics 4(1), 1988"
    ),
    "Bennell 1998": (
        "K. Bennell and others, Intra-rater and inter-rater reliability of a weight-bearing lunge measure of ankle"
        " dorsiflexion, Australian Journal of Physiotherapy 44(3), 1998"
    ),
    "Boone & Azen 1979": (
        "D. C. Boone, S. P. Azen, Normal range of motion of joints in male subjects, Journal of Bone and Joint "
        "Surgery 61-A(5), 1979"
    ),
    "Calatayud 2015": (
        "J. Calatayud and others, The validity and reliability of a new instrumented device for measuring ankle "
        "dorsiflexion range of motion, International Journal of Sports Physical Therapy 10(2), 2015"
    ),
    "de Leva 1996": (
        "P. de Leva, Adjustments to Zatsiorsky-Seluyanov's segment inertia parameters, Journal of Biomechanics "
        "29(9), 1996"
    ),
    "Drechsler 1998": ("A. Drechsler, The Weightlifting Encyclopedia, 1998"),
    "Drillis & Contini 1966": (
        "R. Drillis, R. Contini, Body segment parameters, report 1166-03, New York University, 1966"
    ),
    "Duba 2009": (
        "J. Duba, W. J. Kraemer, G. Martin, Progressing from the hang power clean to the power clean, Strength and"
        " Conditioning Journal 31(3), 2009"
    ),
    "Enoka 1979": ("R. M. Enoka, The pull in Olympic weightlifting, Medicine and Science in Sports 11(2), 1979"),
    "Farhad 2024": ("Farhad and others, on heel height and trunk lean in the squat, 2024 (abstract)"),
    "Fry 2003": (
        "A. C. Fry, J. C. Smith, B. K. Schilling, Effect of knee position on hip and knee torques during the "
        "barbell squat, Journal of Strength and Conditioning Research 17(4), 2003"
    ),
    "Garber 2011": (
        "C. E. Garber and others, Quantity and quality of exercise for developing and maintaining "
        "cardiorespiratory, musculoskeletal and neuromotor fitness in apparently healthy adults, Medicine and "
        "Science in Sports and Exercise 43(7), 2011 (position stand of the American College of Sports Medicine)"
    ),
    "Gourgoulis 2000": (
        "V. Gourgoulis and others, Three-dimensional kinematic analysis of the snatch of elite Greek "
        "weightlifters, Journal of Sports Sciences 18(8), 2000"
    ),
    "Grabe & Widule 1988": (
        "S. A. Grabe, C. J. Widule, Comparative biomechanics of the jerk in Olympic weightlifting, Research "
        "Quarterly for Exercise and Sport 59(1), 1988"
    ),
    "Hemmerich 2006": (
        "A. Hemmerich and others, Hip, knee, and ankle kinematics of high range of motion activities of daily "
        "living, Journal of Orthopaedic Research 24(4), 2006"
    ),
    "Ho 2011": (
        "L. K. W. Ho and others, Reviewing current knowledge in snatch performance and technique, Journal of "
        "Strength and Conditioning Research 28(2), 2014 (first online 2011 to 2014)"
    ),
    "IWF 2020": ("International Weightlifting Federation, Technical and Competition Rules and Regulations, 2020"),
    "Isaka 1996": (
        "T. Isaka, J. Okada, K. Funato, Kinematic analysis of the barbell during the snatch movement of elite "
        "Asian weight lifters, Journal of Applied Biomechanics 12(4), 1996"
    ),
    "Jeffreys 2007": (
        "I. Jeffreys, Warm up revisited: the RAMP method of optimising performance preparation, Professional "
        "Strength and Conditioning 6, 2007"
    ),
    "Kay & Blazevich 2012": (
        "A. D. Kay, A. J. Blazevich, Effect of acute static stretch on maximal muscle performance: a systematic "
        "review, Medicine and Science in Sports and Exercise 44(1), 2012"
    ),
    "Kim 2015": (
        "S.-H. Kim and others, Lower extremity strength and the range of motion in relation to squat depth, "
        "Journal of Human Kinetics 45, 2015"
    ),
    "Kipp 2012": (
        "K. Kipp, J. Redden, M. Sabick, C. Harris, Weightlifting performance is related to kinematic and kinetic "
        "patterns of the hip and knee joints, Journal of Strength and Conditioning Research 26(7), 2012"
    ),
    "Monteiro 2022": ("Monteiro and others, on heel wedges of 0, 25 and 50 mm in the squat, 2022 (abstract)"),
    "Moore & Quintero 2019": (
        "Moore, Quintero, on forward and backward chaining in teaching the clean and the snatch to four novices, 2019"
    ),
    "Powden 2015": (
        "C. J. Powden, J. M. Hoch, M. C. Hoch, Reliability and minimal detectable change of the weight-bearing "
        "lunge test: a systematic review, Manual Therapy 20(4), 2015"
    ),
    "Ratamess 2009": (
        "N. A. Ratamess and others, Progression models in resistance training for healthy adults, Medicine and "
        "Science in Sports and Exercise 41(3), 2009 (position stand of the American College of Sports Medicine)"
    ),
    "Shea & Morgan 1979": (
        "J. B. Shea, R. L. Morgan, Contextual interference effects on the acquisition, retention, and transfer of "
        "a motor skill, Journal of Experimental Psychology: Human Learning and Memory 5(2), 1979"
    ),
    "Takano 1987": (
        "B. Takano, Coaching optimal technique in the snatch and the clean and jerk, National Strength and "
        "Conditioning Association Journal 9, 1987"
    ),
    "Whitehead 2014": (
        "P. N. Whitehead, B. K. Schilling, M. H. Stone, J. L. Kilgore, L. Z. F. Chiu, Snatch technique of United "
        "States national level weightlifters, Journal of Strength and Conditioning Research 28(3), 2014"
    ),
    "Winter 2009": ("D. A. Winter, Biomechanics and Motor Control of Human Movement, 4th edition, 2009"),
    "Wulf 2013": (
        "G. Wulf, Attentional focus and motor learning: a review of 15 years, International Review of Sport and "
        "Exercise Psychology 6(1), 2013"
    ),
}
"""References by the key that entries use, `Surname YEAR`."""
