"""Rows of the NEC that several checks rest on, each with how it was seen."""

from __future__ import annotations

from .records import source

WIRE_310_16 = source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.16 (310.15(B)(16) to 2017)",
    seen="a scan and a residential code of 2018",
)
AMBIENT_310_15_B = source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "ambient factors, Table 310.15(B)(2)(a) to 2017",
    seen="a residential code and a panel-building table",
)
BUNDLED_310_15_C = source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 310.15(C)(1) (310.15(B)(3)(a) to 2017)",
    seen="two table pages",
)
TERMINATIONS_110_14_C = source(
    "NEC (NFPA 70)", "not stated in the copies", "110.14(C)(1)(a)", seen="two copies"
)
LOADS_210_20_A = source(
    "NEC (NFPA 70)",
    "not stated in the copies",
    "210.19(A)(1) and 210.20(A)",
    seen="a forum and a component maker's bulletin",
)
RECEPTACLE_210_21_B_2 = source(
    "NEC (NFPA 70)", "2017 and older", "Table 210.21(B)(2)", seen="two copies"
)
RECEPTACLES_210_21_B_3 = source(
    "NEC (NFPA 70)", "2017 and older", "Table 210.21(B)(3)", seen="two copies"
)
OWN_CIRCUIT_210_22 = source(
    "NEC (NFPA 70)", "not stated in the copy", "210.22", seen="a code forum"
)
PLUGGED_IN_210_23_A_1 = source(
    "NEC (NFPA 70)",
    "as answered in 2012",
    "210.23(A)(1)",
    seen="a text reproduction, a trade answer and forums",
)
FASTENED_210_23_A_2 = source(
    "NEC (NFPA 70)",
    "as answered in 2012",
    "210.23(A)(2)",
    seen="a text reproduction, a trade answer and forums",
)
SMALL_WIRE_240_4_D = source(
    "NEC (NFPA 70)", "2008 to 2023", "240.4(D)", seen="three copies for copper, two for aluminium"
)
MOTORS_240_4_G = source("NEC (NFPA 70)", "not stated in the copy", "240.4(G)", seen="a summary")
RATINGS_240_6_A = source("NEC (NFPA 70)", "to 2020", "240.6(A)", seen="several copies")
CORD_400_5_A = source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 400.5(A)(1), columns A and B",
    seen="a cord maker's reprint; column B of 18 to 12 AWG in a UL excerpt too",
)
TABLE_OR_PLATE_430_6_A = source(
    "NEC (NFPA 70)", "not stated in the copies", "430.6(A)(1)", seen="two copies"
)
WIRE_430_22 = source(
    "NEC (NFPA 70)", "not stated in the copies", "430.22", seen="several trade answers"
)
DEVICE_430_52 = source(
    "NEC (NFPA 70)", "2011 and the older Table 430-152", "Table 430.52", seen="two copies"
)
NEXT_RATING_430_52_C = source(
    "NEC (NFPA 70)", "2008", "430.52(C)(1) exception 1", seen="the text and a code answer"
)
FUSE_430_52_C = source(
    "NEC (NFPA 70)", "2008", "430.52(C)(1) exception 2, fuses", seen="a page that reproduces it"
)
FULL_LOAD_430_248 = source(
    "NEC (NFPA 70)", "1999 (430-148) and current", "Table 430.248", seen="three copies"
)
DEVICE_440_22_A = source(
    "NEC (NFPA 70)", "2001 to 2005 and 2011", "440.22(A)", seen="trade quizzes"
)
PLATE_440_22_C = source(
    "NEC (NFPA 70)",
    "not stated in the copies",
    "440.22(C)",
    seen="a trade answer and a standards forum",
)
WIRE_440_32 = source(
    "NEC (NFPA 70)", "not stated in the copies", "440.32", seen="a newsletter and a trade answer"
)
