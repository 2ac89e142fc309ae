"""What several published checks rest on, each with how it was seen or worked out."""

from __future__ import annotations

from .records import independent, memory, practice, source

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
STRANDED_TABLE_8 = source(
    "NEC (NFPA 70)",
    "2011",
    "Chapter 9 Table 8, stranded uncoated copper, 75 C",
    seen="two copies, one without its edition",
)
REACTANCE_TABLE_9 = source(
    "NEC (NFPA 70)",
    "edition not stated",
    "Chapter 9 Table 9, reactance in PVC conduit, 60 Hz",
    seen="three copies",
)
ADVICE_210_19_A = source(
    "NEC (NFPA 70)",
    "edition not stated",
    "210.19(A) and 215.2(A), informational notes, 3 and 5 %, advice",
    seen="two copies",
)
CORD_400_5_A_COLUMN_B = source(
    "NEC (NFPA 70)",
    "2011 to 2023",
    "Table 400.5(A)(1), column B",
    seen="a cord maker's page, an excerpt of a UL appliance standard",
)
VOLTS_AT_THE_LOAD = source(
    "makers' sheets: an appliance repair text and an ice-machine service manual",
    "undated",
    "volts at the load, 90 to 110 % of the plate",
    seen="two copies, by excerpt",
)
TEMPERATURE_TEST_UL_310 = source(
    "UL 310, electrical quick-connect terminals",
    "7th edition",
    "temperature test",
    seen="two documents for 22 to 16 AWG, one for thicker wire",
)
K_FACTORS_43A = source(
    "IEC 60364-4-43",
    "edition not stated",
    "Table 43A, k factors",
    seen="a BS 7671 pocket guide and a NEN 1010 page, some rows in one of them",
)
COPPER_WITH_HEAT = independent("0.00323 per K seen from 75 C is 0.00393 / (1 + 55 x 0.00393)")
ONE_AND_FIVE_WATTS = practice("1 W in a joint asks for care, 5 W stops its use")
KIRCHHOFF = independent("Kirchhoff's laws worked by hand from the readings")
ADIABATIC_CONSTANTS = memory(
    "constants of the adiabatic formula, IEC 60364-5-54 Table A.54.1; they give "
    "every published k within 0.7 %"
)
LOOP_BY_OHM = independent("Ohm's law over the loop, by hand")
START_AT_80 = practice("80 % of the plate at a start")
ADIABATIC_BY_HAND = independent(
    "adiabatic formula k = sqrt(Qc (beta + 20) / rho x ln((beta + end) / (beta + "
    "start))), worked by hand"
)
MOTOR_BEHIND_THE_WIRE = independent(
    "the motor as an impedance behind the wire, by complex arithmetic"
)
PVC_TO_150_C = memory("ICEA P-32-382, the end of PVC at 150 C")
ROOM_OF_20_K = practice("20 K of room between place and rating")
BAND_BY_ARITHMETIC = independent("ends of the meter's band by arithmetic")
START_POWER_FACTOR = practice("a start has a power factor of 0.5 to 0.8")
