"""The works that formulas and checks cite, each once. The key carries the edition."""

from builder.formulas.cite import Source

COMMON_PRACTICE = Source(
    "common practice, no source", "A fact of the trade that no published source was found for"
)

# Working time
DIRECTIVE_2003_88 = Source(
    "Directive 2003/88/EC", "Certain aspects of the organisation of working time"
)

# Electricity, access, stage and lines
NILSSON_RIEDEL = Source(
    "Nilsson & Riedel 2011", "J. W. Nilsson, S. A. Riedel: Electric Circuits, 9th edition"
)
NFPA_70 = Source("NFPA 70:2020", "National Electrical Code")
NEMA_MG_1 = Source("NEMA MG 1-2016", "Motors and generators")
NEMA_WD_6 = Source("NEMA WD 6-2016", "Wiring devices: dimensional specifications")
IEC_60228 = Source("IEC 60228:2004", "Conductors of insulated cables")
IEC_60364_5_52 = Source(
    "IEC 60364-5-52:2009",
    "Low-voltage electrical installations: selection and erection of equipment, wiring systems",
)
IEC_60309_2 = Source(
    "IEC 60309-2:2021",
    "Plugs, fixed or portable socket-outlets and appliance inlets for industrial purposes:"
    " dimensional compatibility",
)
BS_7671 = Source("BS 7671:2018", "Requirements for electrical installations")
IEEE_141 = Source(
    "IEEE 141-1993", "Recommended practice for electric power distribution for industrial plants"
)
ISO_8528_1 = Source(
    "ISO 8528-1:2018",
    "Reciprocating internal combustion engine driven alternating current generating sets:"
    " application, ratings and performance",
)
GRAHAM = Source(
    "Graham 1969",
    "R. L. Graham: Bounds on multiprocessing timing anomalies, SIAM Journal on Applied"
    " Mathematics 17",
)
BELLMAN = Source("Bellman 1957", "R. Bellman: Dynamic Programming")
OSHA_TRUCKS = Source(
    "OSHA eTool: powered industrial trucks",
    "Understanding the workplace: load handling, load composition, field calculation",
)
CRC_TABLES = Source(
    "Zwillinger 2003", "D. Zwillinger: CRC Standard Mathematical Tables and Formulae, 31st edition"
)
E1_11 = Source(
    "ANSI E1.11-2008", "DMX512-A: asynchronous serial digital data transmission standard"
)
TIA_485 = Source(
    "TIA-485-A:1998",
    "Electrical characteristics of generators and receivers for balanced digital multipoint"
    " systems",
)
IEEE_802_3 = Source("IEEE 802.3-2018", "Ethernet")
SMPTE_292 = Source("SMPTE ST 292-1:2018", "1.5 Gb/s signal and data serial interface")
SMPTE_424 = Source("SMPTE ST 424:2012", "3 Gb/s signal and data serial interface")
AES50 = Source("AES50-2011", "High-resolution multi-channel audio interconnection")
AES10 = Source("AES10-2008", "Serial multichannel audio digital interface")
AES67 = Source("AES67-2018", "High-performance streaming audio-over-IP interoperability")

# Rigging
HIBBELER = Source("Hibbeler 2013", "R. C. Hibbeler: Engineering Mechanics: Statics, 13th edition")
KASSIMALI = Source("Kassimali 2005", "A. Kassimali: Structural Analysis, 3rd edition")
COTTLE_PANG_STONE = Source(
    "Cottle, Pang & Stone 1992",
    "R. W. Cottle, J.-S. Pang, R. E. Stone: The Linear Complementarity Problem",
)
EDMONDS = Source(
    "Edmonds 1971", "J. Edmonds: Matroids and the greedy algorithm, Mathematical Programming 1"
)
LAND_DOIG = Source(
    "Land & Doig 1960",
    "A. H. Land, A. G. Doig: An automatic method of solving discrete programming problems,"
    " Econometrica 28",
)
HALL = Source("Hall, Rigging Math", "D. L. Hall: Rigging Math (Made Simple), online primer")
EN_1991_1_4 = Source("EN 1991-1-4:2005", "Actions on structures: wind actions")

# Sound
ISO_9613_1 = Source(
    "ISO 9613-1:1993",
    "Acoustics: attenuation of sound during propagation outdoors, part 1: absorption of sound by"
    " the atmosphere",
)
ISO_9613_2 = Source(
    "ISO 9613-2:1996",
    "Acoustics: attenuation of sound during propagation outdoors, part 2: general method of"
    " calculation",
)
IEC_61260_1 = Source(
    "IEC 61260-1:2014", "Electroacoustics: octave-band and fractional-octave-band filters"
)
IEC_61672_1 = Source("IEC 61672-1:2013", "Electroacoustics: sound level meters")
ISO_1996_1 = Source(
    "ISO 1996-1:2016", "Acoustics: description, measurement and assessment of environmental noise"
)
KINSLER = Source(
    "Kinsler et al. 2000",
    "L. E. Kinsler, A. R. Frey, A. B. Coppens, J. V. Sanders: Fundamentals of Acoustics, 4th"
    " edition",
)
ABRAMOWITZ_STEGUN = Source(
    "Abramowitz & Stegun 1964", "M. Abramowitz, I. A. Stegun: Handbook of Mathematical Functions"
)
BALANIS = Source("Balanis 2005", "C. A. Balanis: Antenna Theory: Analysis and Design, 3rd edition")
OSHA_1910_95 = Source("29 CFR 1910.95", "Occupational noise exposure")
OLSON = Source(
    "Olson 1973", "H. F. Olson: Gradient loudspeakers, Journal of the Audio Engineering Society 21"
)

# Stage and audience
