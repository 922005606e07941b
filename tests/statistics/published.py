"""Published answers and ratings that several tests count with, each with its source."""

# Bock and Lieberman, Psychometrika 35 (1970) 179: 1,000 people, five items of a test for law
# schools; how many gave each pattern, in binary order from 00000, the first item leftmost.
LAW_SCHOOL = "3,6,2,11,1,1,3,4,1,8,0,16,0,3,2,15,10,29,14,81,3,28,15,80,16,56,21,173,11,61,28,298"
LAW_SCHOOL_MARKS = tuple(
    tuple(int(mark) for mark in f"{pattern:05b}")
    for pattern, people in enumerate(map(int, LAW_SCHOOL.split(",")))
    for _ in range(people)
)

# K. Wuensch, East Carolina University, StatHelp, KR20: ten students, ten items.
TEN_STUDENTS = (
    "1111110110 1011011101 1111011001 0010001000 0000010010"
    " 1110111111 1101110111 1111111101 0101111101 1101101110"
)
TEN_MARKS = tuple(tuple(map(int, row)) for row in TEN_STUDENTS.split())

# Our own worked example of five judges and ten items (assessment science, section 2).
FIVE_JUDGES = (
    (0.80, 0.70, 0.90, 0.60, 0.75, 0.85, 0.95, 0.70, 0.65, 0.80),
    (0.75, 0.65, 0.85, 0.70, 0.70, 0.80, 0.90, 0.75, 0.60, 0.85),
    (0.85, 0.75, 0.95, 0.55, 0.80, 0.90, 0.95, 0.65, 0.70, 0.75),
    (0.70, 0.60, 0.80, 0.65, 0.65, 0.75, 0.85, 0.70, 0.55, 0.80),
    (0.80, 0.70, 0.90, 0.60, 0.70, 0.85, 0.90, 0.75, 0.60, 0.80),
)
