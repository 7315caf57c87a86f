"""Prices, times, weights and counts in running text: what is made wrong is found, what is right is let be."""

from __future__ import annotations

import time
from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen.prose import proofread
from sitegen.prose.amounts import wrong_amounts
from sitegen.prose.find import reading_of

WRONG = [
    # a quantity at a price
    ("Buy 2 m of ticking at £6.50 a metre: £12.00.", "£12.00", "£13.00"),
    ("1.5 m at 8,20 € a metre: 12,80 €.", "12,80 €", "12,30 €"),
    ("The ticking was $7.25 a yard, so $28.00 for my 4 yards.", "$28.00", "$29.00"),
    ("Zips were $3.50 each, $14.00 for all 5.", "$14.00", "$17.50"),
    ("I sell the pouches at $14 apiece. If all 15 go, that's $220.", "$220", "$210"),
    ("Ask for 3.5 m. At £9 a metre you pay £30.50.", "£30.50", "£31.50"),
    ("We have 12 m of lining altogether, and at 4.50 a metre that's 64 euros.", "64 euros", "54 euros"),
    ("so i got three and a half yards at six dollars a yard so that's 20 50", "20 50", "21 00"),
    ("i bought a metre and a half at 8 pounds 40 a metre so that was 12 pounds 40", "12 pounds 40", "12 pounds 60"),
    ("it's five metres and it was 9 pounds a metre so that's 54 pounds", "54 pounds", "45 pounds"),
    ("felt at 2,40 € a sheet, for those 6 sheets: 14,00 €", "14,00 €", "14,40 €"),
    ("The hall costs £12 an hour; for 3 hours that is £38.", "£38", "£36"),
    ("Snaps are 40p each, so 12 of them come to £4.40.", "£4.40", "£4.80"),
    # a list and its total
    ("Drill was $8.00, lining $5.50, tape $1.25. All in: $15.75.", "$15.75", "$14.75"),
    ("The zip was £2.10 and the thread £3.40, so you spent £5.40.", "£5.40", "£5.50"),
    ("The waist is $16 and the hem is $12 that's $26.", "$26", "$28"),
    (
        "You owe me 9 dollars for the drill, 4 for the lining and 2 for thread, so 16 dollars each.",
        "16 dollars",
        "15 dollars",
    ),
    ("Cloth €14.20 and cord €3.30, together: €18.50.", "€18.50", "€17.50"),
    ("I spent €1,250.00 on the machine and €150.00 on the table, €1,500.00 in all.", "€1,500.00", "€1,400.00"),
    ("Cutting took 35 minutes, the seams 40, so 85 minutes altogether.", "85 minutes", "75 minutes"),
    (
        "I would say 1 1/2 hours of cutting, 2 hours on the seams and 2 1/2 hours for the hem, so 7 hours.",
        "7 hours",
        "6 hours",
    ),
    ("They want $13 for the hem and $21 for a waistband, $36 a pair.", "$36", "$34"),
    ("the foam was 28 dollars and the zipper was 4 50 so all in it's 33 50", "33 50", "32 50"),
    # a difference
    ("We took $180. Materials ran to $54, which leaves $136.", "$136", "$126"),
    ("£20.00 minus £13.40 is £7.60, hence: £20.00 minus £13.40 = £7.60.", "£7.60", "£6.60"),
    ("The cotton was £13.20, so I got £7.80 change from a £20 note.", "£7.80", "£6.80"),
    # percent off
    ("The drill was $15.00 a yard, 20% off, so $13.00 a yard.", "$13.00", "$12.00"),
    ("it comes to $40 and i give her 10 percent off which is $5.00 so thanks", "$5.00", "$4.00"),
    ("it's $50 and she gets 10 percent off which is $5.00 so she pays 44.00", "44.00", "45.00"),
    # a share
    ("a roll of webbing was $18.60 so divided by the six bags that's $3.30 worth in each", "$3.30", "$3.10"),
    ("I paid £22.50 for 6, so £3.95 each.", "£3.95", "£3.75"),
    # times and weights
    ("Four 12 oz bags of filling, so 36 oz in total.", "36 oz", "48 oz"),
    ("Three bags of 15 litres, that is 60 litres.", "60 litres", "45 litres"),
    ("40 minutes each when i do them in a row so six is 250 minutes", "250 minutes", "240 minutes"),
    ("so eight is 240 minutes so that's five hours", "five hours", "4 hours"),
    # counts
    ("I laid them out 7 across and 9 down, 72 squares in all.", "72", "63"),
    ("The layout is four blocks across and six blocks down that's 28 blocks.", "28", "24"),
    ("I got 9 out of each sheet and had 4 sheets, so 32 stars.", "32", "36"),
    ("Each apron has three pieces. For 8 aprons we need 27 pieces.", "27", "24"),
    (
        "every block has four darks and five lights so times 20 you're cutting 90 dark squares and 100 light ones",
        "90",
        "80",
    ),
    ("Two in denim, two in lining, so five panels.", "five", "4"),
    ("Three pieces lie side by side, so 24 pieces make 9 rows.", "9", "8"),
    ("We cut 40 dark squares and 30 light ones so 80 altogether.", "80", "70"),
    # rows
    ("Cost\n  drill, 3 m at £6.50    £19.50\n  cord, 10 m at £0.60    £6.80\n", "£6.80", "£6.00"),
    ("Cost\n  drill, 3 m at £6.50    £19.50\n  cord, 10 m at £0.60    £6.00\n  total    £26.50\n", "£26.50", "£25.50"),
    (
        "A class of 8 pupils.\n\n  drill    £20.00\n  cord    £8.00\n  total    £28.00\n  per pupil    £3.80\n",
        "£3.80",
        "£3.50",
    ),
    ("- drill: €12.00\n- cord: €4.50\n- zip: €2.00\n\n*Total for the bag: €19.50*\n", "€19.50", "€18.50"),
    ("| Drill | 3 m | £6.50 | £18.50 |\n| Cord | 4 m | £1.00 | £4.00 |\n", "£18.50", "£19.50"),
    (
        "10 children come.\n\n| Drill | £20.00 |\n| Cord | £8.00 |\n| **Total** | **£28.00** |\n\nThat is £2.90 "
        "a head.\n",
        "£2.90",
        "£2.80",
    ),
    # the same in other words
    ("Fabric: 3 yd at $11 per yard = $36.", "$36", "$33"),
    ("The linen cost €19 a metre and I needed 2.5 m, so that came to €45.70.", "€45.70", "€47.50"),
    ("I paid £8 for the zip, £3 for thread and £14 for the cloth: £24 in all.", "£24", "£25"),
    ("My receipt says cloth £18.40, thread £2.60, buttons £4.00. That's £26.00.", "£26.00", "£25.00"),
    ("We need 24 squares a block, and for 5 blocks that's 100 squares.", "100", "120"),
    ("You get 6 triangles from each strip, so 8 strips give you 46 triangles.", "46", "48"),
    ("Six students at $15 each is $80.", "$80", "$90"),
    ("That makes 4 rows of 9 blocks, 32 blocks in total.", "32", "36"),
    ("If each bag takes 40 minutes, nine bags take 5 hours.", "5 hours", "6 hours"),
    ("The machine is $240 and with 15% off you pay $214.", "$214", "$204"),
    ("Eight buttons at 45p are £3.20.", "£3.20", "£3.60"),
    ("A cone costs €7.20 and lasts for about six shirts, so €1.40 a shirt.", "€1.40", "€1.20"),
    ("Two packs of needles at $3.75 each: $7.00.", "$7.00", "$7.50"),
    ("I charge $20 an hour and the job took 3 hours, so $80.", "$80", "$60"),
    ("so the zips were two dollars each and i bought six so that's fourteen dollars", "fourteen dollars", "12 dollars"),
    (
        "okay so thirty minutes for the pockets and forty five for the straps so eighty five minutes all in",
        "eighty five minutes",
        "75 minutes",
    ),
    ("the lining was 6 50 a yard and i got two yards so 15 dollars", "15 dollars", "13 dollars"),
    ("i've got ten blocks and every block has 8 triangles so that's 90 triangles", "90", "80"),
    ("i had forty dollars and i spent 27 so i've got 15 dollars left", "15 dollars", "13 dollars"),
    ("The foam weighs 400 g, the cover 250 g; together 750 g.", "750 g", "650 g"),
    ("We sold 14 at £6, which is £78. After costs of £31 we had £53 for the fund.", "£78", "£84"),
    ("The mat was $22.00 and the cutter $15.50, for a total of $38.50.", "$38.50", "$37.50"),
    ("The pattern costs $12 and the printing $8, bringing it to $22.", "$22", "$20"),
    ("Total for the kit: $4.50 + $3.25 + $1.75 = $9.00.", "$9.00", "$9.50"),
    ("Cost per bag: $9.50 / 5 = $1.80.", "$1.80", "$1.90"),
    ("12 x $4.50 = $52.00", "$52.00", "$54.00"),
    ("3 bags × 250 g = 700 g", "700 g", "750 g"),
    ("If you cut two pockets for each of the 14 aprons, that's 24 pockets.", "24", "28"),
    ("20 children with 4 buttons each need 60 buttons.", "60", "80"),
    ("Each child gets 4 buttons, so 20 children need 90 buttons.", "90", "80"),
    ("Split between the four of us, the $36 came to $8 each.", "$8", "$9"),
    ("The hire of the hall is £45, shared by 9 people that's £6 a head.", "£6", "£5"),
    ("I made 5 bags and sold them for $12.50 each, making $60.50.", "$60.50", "$62.50"),
    ("The ribbon is sold at 80 cents a yard; 15 yards cost $12.80.", "$12.80", "$12.00"),
    ("Two reels of thread: $3.40. Four zips: $6.00. Sum: $9.60.", "$9.60", "$9.40"),
    ("Saturday 2 hours, Sunday 3 1/2 hours: 6 1/2 hours of work.", "6 1/2 hours", "5 1/2 hours"),
    ("The quilt has 6 rows of 8 blocks, so 42 blocks. Of these 24 are plain, which leaves 24 to piece.", "42", "48"),
    ("The quilt has 6 rows of 8 blocks, so 48 blocks. Of these 24 are plain, which leaves 26 to piece.", "26", "24"),
    # words that bind in other ways
    ("- cotton: 3 m at £6.50 a metre, £18.50", "£18.50", "£19.50"),
    ("2 m of drill at €9 a metre, €19.", "€19", "€18"),
    ("12 buttons at 35p, £4.40.", "£4.40", "£4.20"),
    ("$18 a cushion, so $38 for the pair.", "$38", "$36"),
    ("The cushions are €14.50 each, so €28 for both.", "€28", "€29"),
    ("Hooks are 30p each, so £3.30 a dozen.", "£3.30", "£3.60"),
    ("Cuffs are £6 each, which makes £13 for the pair.", "£13", "£12"),
    ("We charge £45.00 less 20 per cent. The discount is £8.00, and you pay £36.00.", "£8.00", "£9.00"),
    ("We charge £45.00 less 20 per cent. The discount is £9.00, and you pay £35.00.", "£35.00", "£36.00"),
    ("The bag is $60. For friends there is a 15 percent discount, so they pay $54.", "$54", "$51"),
    ("The course is £120, minus a 5% reduction: £112.", "£112", "£114"),
    (
        "i charge nine pounds for the hem fourteen for the zip and six for the pocket that's twenty eight pounds",
        "twenty eight pounds",
        "29 pounds",
    ),
    (
        "so i asked twenty pounds for the hem and he gets ten percent off and pays nineteen pounds",
        "nineteen pounds",
        "18 pounds",
    ),
    ("Twelve bibs at 25 minutes come to 290 minutes.", "290 minutes", "300 minutes"),
    ("Five cushions at 40 minutes make 3 hours.", "3 hours", "3 h 20 min"),
    (
        "A block takes me 6 minutes, 6 minutes each. At that rate the 30 blocks will take 190 minutes.",
        "190 minutes",
        "180 minutes",
    ),
    ("Allow 5 minutes each. At that pace 24 squares take 110 minutes.", "110 minutes", "120 minutes"),
    (
        "Count on 15 minutes apiece; at that rate your eight napkins will take 130 minutes.",
        "130 minutes",
        "120 minutes",
    ),
    (
        "cutting is ten minutes pinning is fifteen and sewing is thirty so fifty minutes all told",
        "fifty minutes",
        "55 minutes",
    ),
    ("tracing is 20 minutes cutting is 25 and the seams are 40 so that's 75 minutes", "75 minutes", "85 minutes"),
    ("We are six people, and 9 m are put aside. It costs £8 a metre, so your share is £13.", "£13", "£12"),
    (
        "We have ten pupils and 15 m of canvas. It's £7 a metre, which makes each pupil's share £11.50.",
        "£11.50",
        "£10.50",
    ),
    ("Ticking was £18. The cord was £4.20 and the zip £3.80. The foam came to £22. Total £47.", "£47", "£48"),
    ("Thread was $6. The batting was $21 and the backing $33. Grand total: $62.", "$62", "$54"),
    (
        "Fabric cost €30. Then I bought a zip for €4. And I needed thread for €3.50. Altogether that was €38.50.",
        "€38.50",
        "€37.50",
    ),
    ("I set 5 across and 8 down, for 45 blocks.", "45", "40"),
    ("The quilt is 9 squares across and 11 squares long, which means 90 squares.", "90", "99"),
    ("The top is 6 blocks wide and 8 blocks high, so 46 blocks.", "46", "48"),
    ("It's 7 blocks wide and 9 blocks tall: 56 blocks.", "56", "63"),
    ("There are 30 blocks in it. Four patches in each of them makes 130 patches.", "130", "120"),
    ("I made 12 bags. Two pockets in each of them, so 26 pockets.", "26", "24"),
    ("Divide your 240 by 8 and you see that you want 35 strips.", "35", "30"),
    ("Divide 96 by 12, so you cut 9 strips.", "9", "8"),
    ("so 144 divided by 6 is 26 squares", "26", "24"),
    ("There are 32 buttons on it: 24 down the front and 6 on the cuffs.", "32", "30"),
    ("You have 18 pleats to press: 10 in front and 6 at the back.", "18", "16"),
    ("It comes in rolls, at £4.50. Your four rolls will be £17.", "£17", "£18"),
    ("Elastic is sold in packs, at €2.40. Your five packs would come to €12.40.", "€12.40", "€12.00"),
    ("3 yards at $14 a yard set me back $44.", "$44", "$42"),
    ("The thread set me back $4, the zip $2 and the cloth $12, so $19.", "$19", "$18"),
    ("- canvas, £12.50\n- lining for the bag, £6.25\n- zip, £2\n\nThat's £21.75 for everything.", "£21.75", "£20.75"),
    (
        "- 2 m of canvas at £8 a metre: £16\n- thread, £3.20\n\nThat's £18.20 for the lot, less than in the shop.",
        "£18.20",
        "£19.20",
    ),
    ("- canvas, $14\n- webbing, $5.50\n\nAll up I paid $18.50.", "$18.50", "$19.50"),
    ("* batting, €22\n* backing, €31\n\nAltogether that's €52, not bad.", "€52", "€53"),
    (
        "Waist, two seams   £15.00\nZip replaced       £11.50\nThread              £1.25\nOne skirt, complete  "
        "£28.75",
        "£28.75",
        "£27.75",
    ),
    ("For eight aprons I bought tape. There are 3 pockets on every apron. The parents cut all 27 pockets.", "27", "24"),
    ("The cloth was $86. A shop asked $240, so I'm $164 in front.", "$164", "$154"),
    ("I paid £34. The tailor wanted £80, so I saved £48.", "£48", "£46"),
    ("The top takes 60 squares. With 52 in the box, you have to cut 10 more.", "10", "8"),
    ("At $14.00 a yard 3 yards ran me $45.", "$45", "$42"),
    # told over, multiplied aloud, run up over several sentences
    (
        (
            "I got 2 yards of muslin at $4.50 a yard, which is $9.00. Thread was $2.75 and the hooks $1.80, "
            "so the whole lot came to $14.55. The shop asks $30."
        ),
        "$14.55",
        "$13.55",
    ),
    (
        "Wadding was £12.40. The backing cost £9.60 and the binding £3.50, so all in all I spent £24.50.",
        "£24.50",
        "£25.50",
    ),
    (
        "Canvas came to $14.00. Add a five-dollar zipper and three dollars' worth of cord and you're at $24.",
        "$24",
        "$22",
    ),
    (
        "The denim is thirty dollars. Add six dollars for buttons and you're up to thirty-four dollars.",
        "thirty-four dollars",
        "36 dollars",
    ),
    ("The linen was £21.00. With the zip at £3.20 that makes £23.20.", "£23.20", "£24.20"),
    (
        "The felt comes to £8.40. Add £3.60 for thread and £2.00 for pins, and you will have spent £15.00.",
        "£15.00",
        "£14.00",
    ),
    (
        "I paid $11.50 for the batting. Throw in $4.25 of bias tape and I was out $16.75 for the pair.",
        "$16.75",
        "$15.75",
    ),
    (
        (
            "- 3 m linen at £9.00 a metre: £27.00\n- zip, 40 cm: £2.50\n\nSo the whole thing cost me £31.50, "
            "plus thread I had."
        ),
        "£31.50",
        "£29.50",
    ),
    ("Corduroy was $7.50 a yard. My 4 yards cost $32.00, and I had a coupon left.", "$32.00", "$30.00"),
    ("6 m has been ordered at £12.50 a metre, £72.50 in all.", "£72.50", "£75.00"),
    ("Webbing is £1.20 a metre, and the 5.5 m I used came to £6.06.", "£6.06", "£6.60"),
    ("It was six dollars a yard, so three and a half yards is 24 dollars.", "24 dollars", "21 dollars"),
    ("she charged me eight pounds a cushion, so 56 pounds for the six of them", "56 pounds", "48 pounds"),
    ("The ribbon was 80 cents a yard. Our twelve yards cost $9.80.", "$9.80", "$9.60"),
    ("Packs of 12. Five shirts with two buttons apiece use up 10 and leave 4 buttons in the tin.", "4", "2"),
    ("Snaps come 24 to a card. Six romper suits with three each use up 18 and leave 8 for mending.", "8", "6"),
    ("The order: 9 small, 7 medium and 4 large, so 22 vests.", "22", "20"),
    ("Eight red, six blue and six white, that's 22 flags in all.", "22", "20"),
    ("5 plain, 5 spotted and 6 striped makes 15 squares.", "15", "16"),
    ("Cut two front pieces and two back pieces, so that's six pieces altogether.", "six", "4"),
    (
        (
            "You want four outer panels and four lining panels, all the same size. So that's six panels "
            "altogether, and then the wadding."
        ),
        "six",
        "8",
    ),
    ("the kids wanted flags so eight times seven is 54 flags and then the strings", "54", "56"),
    ("twenty four times three is 62 tabs so get cutting", "62", "72"),
    (
        (
            "There are 30 chairs in the hall and all want covers. Five helpers have come forward, which "
            "makes five chairs each."
        ),
        "five",
        "6",
    ),
    ("We have 48 bibs to hem. Four of us will sew, so that's 14 bibs each.", "14", "12"),
    ("Three in a row, twelve coasters, so you need five rows.", "five", "4"),
    ("You'll get five circles side by side across the felt, so twenty circles are five rows.", "five", "4"),
    ("Four to a row, 28 squares, so 8 rows.", "8", "7"),
    ("You need two layers per mitt, so for 8 mitts that's 18 layers.", "18", "16"),
    (
        "Everybody cuts two outer and two lining pieces, so with 8 people there will be 24 pieces on the table.",
        "24",
        "32",
    ),
    ("The quilt takes 48 squares: 28 light and 24 dark.", "48", "52"),
    ("You need 30 tabs: 18 red and 14 white.", "30", "32"),
    ("We have 120 minutes: 30 for cutting, 60 for sewing, 20 for pressing and cake.", "120 minutes", "110 minutes"),
    (
        "The evening has 150 minutes: 45 for the talk, 90 for sewing and 25 for clearing up.",
        "150 minutes",
        "160 minutes",
    ),
    ("I sewed a set in about 2 hours, so all five sets took 12 hours.", "12 hours", "10 hours"),
    ("One bonnet takes about 25 minutes, so the eight bonnets took 225 minutes.", "225 minutes", "200 minutes"),
    ("I can hem a napkin in 12 minutes, so ten napkins take three hours.", "three hours", "2 hours"),
    (
        (
            "From those 3 hours take 20 minutes for tea and 10 minutes for tidying: sewing time is 2 hours "
            "45 minutes."
        ),
        "2 hours 45 minutes",
        "2 1/2 hours",
    ),
    (
        (
            "  Felt, 3 sheets at $1.20     $3.60\n  Floss                      $2.40\n  Beads                 "
            "     $4.15\n  All together              $10.51"
        ),
        "$10.51",
        "$10.15",
    ),
    ("Thread   £3.20\nButtons   £4.50\nFabric   £12.80\nAltogether   £21.50", "£21.50", "£20.50"),
    ("With 20 bears at 150 grams you need 3200 grams of pellets.", "3200 grams", "3000 grams"),
    ("12 bags at 200 g are 2200 g of rice.", "2200 g", "2400 g"),
    (
        "The cloth was $6.20 a yard, or $124.00. We got 10% off, a saving of $14.20, and paid $111.60.",
        "$14.20",
        "$12.40",
    ),
    ("Of the 24 flags I have sewn 15. The other 8 can wait.", "8", "9"),
    (
        (
            "Fabric     £84.00\nTrim       £21.00\nTotal      £105.00\n\nDivided by 15 singers, that makes "
            "£7.50 a head."
        ),
        "£7.50",
        "£7.00",
    ),
    ("With a fee of £35 each, a class of 9 brings in £305.", "£305", "£315"),
    ("The tutor asks £240. Split between twelve of us that's £24 each.", "£24", "£20"),
    ("Foam was £18 a metre. I bought a metre and a half, which was £29.", "£29", "£27"),
    ("Six panels with four eyelets each makes 26 eyelets.", "26", "24"),
    ("Ten pockets, three lines on each, that's 33 lines of stitching.", "33", "30"),
    ("Seven rows of eight blocks, so 54 blocks to piece.", "54", "56"),
    ("I sold 14 bags at £9 each, so I took £136.", "£136", "£126"),
    ("The dress form was $85 and the stand $22.50, so $105.70 together.", "$105.70", "$107.50"),
    ("Hall hire is £36 for the day and there are nine of us, so £5 each.", "£5", "£4"),
]  # fmt: skip

RIGHT = [
    "Buy 2 m of ticking at £6.50 a metre: £13.00.",
    "1.5 m at 8,20 € a metre: 12,30 €.",
    "The small bag is $12, the large one $18, and the set of both $27.",
    "The hem is $18 and the waist is $25, so $40 for both.",
    "I paid $20 for the cloth and $5 for thread, so $30 with the bus fare.",
    "Zips are $3, $4 and $5, so about $11 for one of each.",
    "The hem takes 25 minutes, the waist 75, so allow 2 hours altogether.",
    "It works out at $14.39 for each student; collect $15.",
    "At $14 a yard, 2 yards come to $28, plus tax $30.24.",
    "I bought 2 m of cotton at £7 a metre; the lining was £12.",
    "I bought 2 m of cotton at £7 a metre, and the lining was £12.",
    "Deposit of £20 taken; £47.50 owing.",
    "The kit is £18, or £15 each for three or more, so three cost £45.",
    "The cotton was £13.20, so I got £6.80 change from a £20 note.",
    "It is £12 to £15 a metre, so a 2 m piece is £24 to £30.",
    "Half price: it was £12, now £6.",
    "$5 off orders over $40, so the $42 order cost $37.",
    "Tickets are £5 per adult and £3 per child, so a family of four pays £16.",
    "It was 30% off, so $21 instead of $30.",
    "Marked $50, 20% off with a further 10% for members, so $36.",
    "It was $50, 20% off, so I saved $10 and paid $40.",
    "Buy three for £10 or £4 each.",
    "Thread $4, scissors $9, a spare needle $5.50.",
    "Lining was $6, webbing was $1.80 and thread was $9.",
    "She weighs 62 pounds and the bed weighs 5 pounds.",
    "Use 2 pounds of stuffing for the large one and 1 pound for the small one.",
    "The bus takes 20 minutes and the class 90 minutes, so two hours is plenty.",
    "90 minutes: 1 hour for cutting, the rest for sewing.",
    "It takes 50 minutes, so an hour is enough.",
    "The class runs from 10 am to 1 pm, three hours with 20 minutes for tea.",
    "Three sessions of 50 minutes each, so two and a half hours in all.",
    "300 minutes so that's five hours",
    "it was fourteen euros a meter and the thread was four",
    "so sixteen fifty for the piece at eleven dollars a yard and a yard and a half",
    "the linen was eighteen dollars a yard so twenty two fifty for six so three seventy five each",
    "Pin for 5 minutes, sew for 10 minutes, put together 12 minutes.",
    "Each child has two cards. For 12 children and a teacher we need 26 cards.",
    "Each bag has two handles. For 12 bags buy 26 handles.",
    "I laid them out 8 across and 9 down, 72 squares in all.",
    "6 across and 7 down, so 13 rows to press.",
    "8 across and 9 down, with 4 extra that is 76.",
    "Call 555 0199 or write by 14.05.2024; the shop opens at 9.30.",
    "In 2019 I paid $9 a yard, in 2024 it was $14.",
    "I had $50 and spent $24 and $3, which leaves $23.",
    "Cost\n  drill, 3 m at £6.50    £19.50\n  cord, 10 m at £0.60    £6.00\n  total    £25.50\n",
    "A class of 8 pupils.\n\n  drill    £20.00\n  cord    £8.00\n  total    £28.00\n  per pupil    £3.50\n",
    "A class of 9 pupils.\n\n  drill    £20.00\n  cord    £8.00\n  total    £28.00\n  per pupil    £3.20\n",
    "| Hems | £14.00 |\n| Waist | £18.00 |\n| | £32.00 |\n| Rush, 25% | £8.00 |\n| **To pay** | **£40.00** |\n",
    "- drill: €12.00\n- cord: €4.50\n\nThe total for last year was €18.00.\n\n- total: €90\n",
    "Drill was $9.00, lining $6.00.\n\nThe show made $16.00 altogether.",
    "We have 20 m at £2 a metre: about £42.",
    "Foam cost 32 dollars, and the ones in the store were like 110 dollars.",
    "Three 20 oz bags, so 60 oz in total, plus all the scraps.",
    "I charge $18 for a hem and $25 for a waist, so $40 for both jobs together.",
    "cloth    £12.00\nthread   £3.00\npostage  £4.50\nless voucher   £5.00\ntotal    £14.50",
    "| Size | Width | Price |\n|---|---|---|\n| S | 30 cm | £12 |\n| M | 35 cm | £14 |\n| L | 40 cm | £16 |",
    "Child, 2-4 years: £12.00",
    "Child, 5-7 years: £14.00",
    "Adult: £18.00",
    "The total depends on the sizes: £44.00 for a family of three.",
    "Each child needs two squares. With 20 children I cut 45 squares to be safe.",
    "Every block has 4 triangles, and I made 12 blocks. I cut 50 triangles because some get spoilt.",
    "You get 6 squares from each strip; cut 9 strips, which gives 54 squares, 4 more than you need.",
    "A packet has 42 squares. For the 80 squares of the top you need 2 packets.",
    "Each row has 8 blocks. There are 9 rows and 10 seams to match in every one.",
    "Each apron takes 45 minutes. For 12 aprons two of us need 4 1/2 hours.",
    "Each bag takes 40 minutes, but the 6 bags took only 3 hours in a row.",
    "There are 4 pleats on each side, 8 in all.",
    "Sew 3 rows of 12 pleats, 36 altogether.",
    "4 rows of 9 blocks, 5 rows of 8 blocks.",
    "Three rows of 12 hexagons, then two rows of 11, in total 58.",
    "I charge $25 an hour. The job took 3 hours, but I asked for $60 because it was for a friend.",
    "The class is £12 a head, £10 for members, so the 8 of them paid £88 between them.",
    "We are 8: six adults at £12 and two children at £5, £82 in all.",
    "Linen is £14 a metre, cotton £8 a metre, so a metre of each is £22.",
    "The wool was £24 a metre reduced to £16, so I saved £8 a metre, £20 on my 2.5 m.",
    "The wool was £24 a metre in March. I paid £16 a metre, so 2.5 m were £40.",
    "I bought 2 m at £6 a metre and 3 m at £4 a metre, £24 in all.",
    "I bought 2 m at £6 a metre and 3 m at £4 a metre. The bill was £24.",
    "2 m of cotton at £6 and thread at £2.50: £14.50.",
    "2 m of cotton at £6 and a zip for £3 make £15.",
    "3 reels at £1.80 and 2 zips at £2.20 come to £9.80.",
    "It was two metres at seven pounds a metre and a zip so that's seventeen pounds with the thread.",
    "The fabric was $8.99 a yard, so 3 yards came to $26.97, call it $27.",
    "The fabric was $8.99 a yard so about $27 for three.",
    "At $12.50 a yard you'd pay $15.63 for a yard and a quarter.",
    "At $12.50 a yard, 1 1/4 yd is $15.63.",
    "£3.33 each, £10 for three.",
    "Three for £10, so £3.33 each.",
    "It's $4 for a fat quarter, $14 for a set of four.",
    "A fat quarter is $4, so four would be $16, but the bundle is $14.",
    "The course costs €120, €30 of which is for the material, so €90 for eight evenings.",
    "The course is 8 evenings of 2 hours, 16 hours, and costs €120, so €7.50 an hour.",
    "We took £216 at the fair. The table was £35, materials £69, so £112 was left for the fund.",
    (
        "| Item | Qty | Each | Cost |\n|---|---|---|---|\n| Drill | 2 m | £8.00 | £16.00 |\n| Zips | 10 | £0.95 | "
        "£9.50 |\n| Total | | | £25.50 |"
    ),
    "| Size | Width | Price |\n|---|---|---|\n| S | 30 cm | £12 |\n| M | 35 cm | £14 |\n| L | 40 cm | £16 |",
    "I work from 9 to 12 and 1 to 4, so six hours a day and 30 hours a week.",
    "It takes 20 minutes a side, so 40 minutes for both, plus 10 minutes of pressing.",
    "Soak for 30 minutes, rinse, spin for 5 minutes, dry for 2 hours, altogether nearly 3 hours.",
    "Steam 10 seconds, wait 20 seconds, steam again 10 seconds.",
    "Press for 10 seconds on each of the 8 spots, so a good minute and a half.",
    "It's half an hour a seam, and there are four, so two hours.",
    "The wadding weighs 80 g per square metre, two layers 160 g.",
    "A 500 g bag fills two cushions, so 250 g each.",
    "Use 12 oz in each cushion; four cushions take three 16 oz bags.",
    "Three 16 oz bags, so 48 oz, which is 3 pounds.",
    "The dog weighs 28 pounds, the bed cost 28 pounds.",
    "10 percent off £45 is £4.50.",
    "With the 10 percent discount the £45 coat cost £40.50, so I saved £4.50.",
    "VAT at 20% on £50 is £10, so £60.",
    "It was $30, half off, so $15.",
    "It was $30, a third off, so $20.",
    "Marked down from $30 to $20, 10% off at the till, so $18.",
    "I gave a £20 note for £13.40 and got £6.60 back.",
    "In 2019 the class cost $85, in 2024 it was $110, so $25 more.",
    "Page 12, 8 to 10 squares, phone 020 555 0199, on 12 March at 7.30 pm.",
    "Room 4, £12; room 5, £14; both have an iron.",
    "Prices: adults £8, concessions £6, children £4. A family ticket is £20.",
    "The first lesson is free, then £9 each, so £45 for six lessons.",
    "Pay £50 now and £70 at the first class, £120 in all.",
    "Pay a deposit of £30; the balance of £90 is due on the day.",
    "You have 40 minutes. Ten minutes for pinning leaves 30 minutes for sewing.",
    "There were 30 of us. Each made two pouches, and we sold 52 of the 60 pouches at £4, which made £208.",
    "I paid 5 dollars for the pattern and 22 for the fabric so with thread i'm at 30",
    "i get six dollars an hour so three hours is eighteen dollars",
    "okay so a yard is nine dollars and i need a yard and a half so thirteen fifty",
    "the fabric's 12 bucks a yard and i only used half a yard so it's six bucks",
    "it was seven ninety nine a yard so two yards is fifteen ninety eight",
    "it's like four dollars for the zipper and two for the thread so six bucks",
    "each block takes me twenty minutes so nine blocks is three hours",
    "you get eight squares per strip so five strips is forty squares",
    "you cut two fronts and two backs and four straps so that's eight pieces",
    "I cut 12 strips, 8 of them long and 4 short. Each long one makes 5 squares, so 40 squares.",
    "Four corners of three layers each, so 12 layers of cloth.",
    "There are 6 machines for 12 pupils, so two to a machine.",
    "Two 90 minute sessions: three hours.",
    "Two sessions of 90 minutes, three hours in all, £15 each or £25 for both.",
    "The pattern has 16 pieces: 10 in cloth, 4 in lining, 2 in interfacing.",
    "Ten in cotton, four in lining, so fourteen pieces to mark.",
    "It came to £42.80 with the thread. I had guessed £40.",
    "Budget £25, spent £22.40, £2.60 left.",
    "My kid's cape cost $14.00 in satin, $3.50 for ribbon and nothing else, $17.50.",
    "Takings £216.00\nTable £35.00\nMaterials £69.00\nLeft for the fund £112.00\n",
    "cloth    £12.00\nthread   £3.00\npostage  £4.50\nless voucher   £5.00\ntotal    £14.50\n",
    (
        "Income\n  tickets, 40 at £3    £120\n  cakes    £45\n  total    £165\nCosts\n  hall    £60\n  tea    "
        "£15\n  total    £75\n"
    ),
    "Cotton: 2 m\nCost: £14\nTime: 3 hours\nLining: £6\nTotal: £20\n",
    # words that bind in other ways
    "I bought 3 m of cotton at £6 a metre, £18.",
    "- cord: 4 m at £1.50 a metre, £6 with the offer",
    "I bought 2 m at £6 a metre, £11 for the lining and £3 for thread.",
    "4 zips at £1.50 each, £5 for the lot if you ask nicely.",
    "£35 per curtain, £60 for the pair.",
    "£35 per curtain, or £65 for the pair.",
    "£35 per curtain, so £70 for the pair.",
    "They are £6 each, so £12 the pair, £11 to members.",
    "Zips are £3 each, so £36 a dozen.",
    "Buttons are 20p each, £2 a dozen.",
    "We ask £80.00 less 5 per cent. The discount is £4.00, and the customer pays £76.00.",
    "We ask £80 less 5 per cent for cash. Postage is £4.50, and the customer pays it.",
    "It's $40 with 10% off. Shipping is $5, so you pay $41.",
    "There is a discount of 10% on orders over £50. The last order was £64, and I paid £57.60.",
    "10 per cent off, and the customer pays £54.",
    "we charge twelve pounds for the hem eighteen for the waist and ten for the tapering that's forty pounds",
    "we charge twelve pounds for a hem and eighteen for the waist but thirty four pounds for lined ones",
    "she paid eight pounds for the zip and it took two pounds of stuffing so 10 pounds",
    "Fourteen cloaks at 45 minutes come to 630 minutes.",
    "Six lessons at 50 minutes come to 5 hours.",
    "6 people at 2 machines make 30 minutes each.",
    "Allow about 4 minutes apiece. At that rate the 42 blocks will keep you busy for 168 minutes.",
    "Allow 4 minutes apiece. At that rate you are done with 42 blocks in under 3 hours.",
    "Each takes 20 minutes. At that rate I finish 3 an hour and 12 by teatime, 240 minutes on.",
    "cutting is fifteen minutes sewing is forty and the hem is twenty so seventy five minutes",
    "cutting is fifteen minutes sewing is forty and the hem is twenty so an hour and a quarter",
    "cutting is fifteen minutes the width is 40 and the hem is two so twenty minutes is fine",
    "Pinning is 10 minutes, cutting is 20, so the first 30 minutes are gone.",
    "We are eight people and 8.8 m are put aside. It costs £12 a metre, which makes your share £13.20.",
    "We are 12 people, the cloth was 14.4 m. At £5 a metre your share is £6.00.",
    "Cloth was £12 a metre and the hall is £40 for eight people, so your share is £5.",
    (
        "Canvas was $24 a metre and I bought 2.5 m, so $60. Foam was $24. The zip was $5.40 and the cord $7.80. "
        "Grand total $97.20."
    ),
    "The shop wanted $149. I paid $24 for foam. The zip was $5.40 and the cord $7.80. Total $37.20.",
    "Last year it was $30. The year before $28, before that $27. Total sales were $81 lower.",
    "I paid $20 in May. In June I paid $22. In July $24. Altogether I made 12 bags at $66.",
    "The hem is £12. The waist is £14. The zip is £9. Total rework is £30.",
    "The quilt is 6 across and 7 down, for 42 blocks.",
    "It is 6 across and 7 down, for 2 beds.",
    "The runner is 4 squares across and 12 squares long, which means 48 squares.",
    "The rug is 8 blocks wide and 10 blocks long, with a border of 40 blocks.",
    "3 inches wide and 12 inches long, 40 squares in a pack.",
    "It's 5 blocks wide and 6 blocks high. 25 blocks are plain.",
    "You need 42 blocks. Four patches in each of them makes 168 squares.",
    "There are 42 blocks. Put 4 pins in each of them; a tin holds 150.",
    "There are 6 tables with 4 stools. Put two chairs beside each of them, 12 chairs in all.",
    "Divide your 360 by 9 and you see that you want 40 strips.",
    "Divide your 365 by 9 and you see that you want 41 strips.",
    "Divide 36 by 3.14 and you get 11.5.",
    "Divide the 24 by 2 and add 1, so 13 pleats.",
    "There are 28 corners in the whole set: 24 on the napkins and 4 on the cloth.",
    "You need 12 buttons: 8 on the front and 2 on each cuff.",
    "You need 12 buttons: 8 on the front, 2 on the cuffs and 1 spare.",
    "There are 30 pupils: 12 in the first row and 14 in the second, and the rest stand.",
    "We have 24 machines: 6 on the left, 4 on the right.",
    "It comes in rolls of that length, at £5.50. Your three rolls will be £16.50.",
    "The tape is £5.50 a roll. Your three bags will be £20 each.",
    "That's $14.00 for the canvas and $6 for the lining.",
    "- canvas, $9.50\n- lining, $6.00\n\nThat's $12.50 for the thread and the zip.",
    "- canvas, $9.50\n- lining, $6.00\n\nThat's $14.00 for the set.",
    (
        "- 1 yard of canvas, $9.50\n- 3/4 yard of lining at $8.00 a yard, so $6.00\n- thread (I had "
        "that)\n\nThat's $15.50 for the two fabrics, which beats the shop."
    ),
    "- canvas, $9.50\n- lining, $6.00, or $8 in silk\n- zip, $2\n\nThat's $19.50 for everything.",
    "- canvas, $9.50\n- lining, $6.00\n- zip at $2 each\n\nAll up I paid $21.50.",
    "1. Small bag, $12\n2. Large bag, $16\n3. Rucksack, $30\n\nAll up we sold $640 worth.",
    "Hem £12.00\nWaist £18.00\nComplete £25.00",
    "Hem          £12.00\nWaist        £18.50\nBoth, complete   £28.00",
    (
        "Shortening, lined       £12.00\nWaist, three seams      £18.00\nTape and thread          £1.50\nOne pair, "
        "complete      £31.50"
    ),
    (
        "Zip, 100 cm           1                   £3.80\nPiping cord           7 m at £0.60        £4.20\nCloth   "
        "                                 £29.00\nFoam, cut to size     1                   £32.00\nTotal          "
        "                           £69.00"
    ),
    "For six capes you need 5 m. There are 9 stars on every cape. A team of parents cut all 54 stars.",
    "There are 9 stars on every cape. We have 6 capes and cut 60 stars; all 60 are gone.",
    "I paid $154.30. The shop quoted me $420 for the ready-mades, so I'm $265.70 in front.",
    "It was $50, then $40, then $36 at the till, so I saved $14.",
    "The kit was $30 and cloth would be $45, so I saved $15 and the postage.",
    "I paid £30. The shop wanted £90, and a friend gave me £12, so I'm £72 better off.",
    "It takes 48 squares. With 42 in the pack, you'll have to find 6 more.",
    "It takes 48 squares. With 40 from the pack and 5 of my own I need 3 more.",
    "The kit has 20 squares. With 2 packs you get 4 more.",
    "so 360 divided by 9 is 40 strips",
    "36 divided by 3 is 12 and 4 more is 16 pleats",
    "It ran to $15 for 3 yards at $5 a yard.",
    "At $12.00 a yard that ran me $10.50 for the 7/8 yard.",
    "Thread set me back $4, the zip $2 and the cloth $12, so $18.",
    "Two pairs are £63.00. For the pair of curtains it is £60, a saving of £3.",
    "At £9 each the pair is £18.",
    "The deposit is £20. The balance is £45. Total £65.",
    "A pair costs £14, so £7 each.",
    "Three at 20 minutes: an hour.",
    "The class is 2 hours at 4 pounds an hour, 8 pounds.",
    "Cut 4 wide and 6 long strips, 10 in all.",
    "3 long and 4 short strips, so 7 strips.",
    "24 squares: 12 in red and 12 in blue.",
    "24 squares: 12 in red, 8 in blue and some in white.",
    "The wool was £30. With a 10% discount you pay £27, or £25 in cash.",
    "The bag is $60. Members with a 15 percent discount pay $51.",
    "It was $40. The 20% off sale ends Friday; they pay $9 for a zip.",
    "The cloth is £8. Students get 10% off books and pay £7 for a pad.",
    "Curtains are £35 each, so £80 for the pair with the poles.",
    "Curtains are £35 each and the pole £20, so £90 for the pair.",
    "The bags are £18 each, so £54 for the three.",
    "Cushions are £12 each, so you get £2 off for the pair.",
    "Cushions are £12 each, so £20 for a pair of small ones.",
    "The pillow is $14 each, which is $2 a pair more than last year.",
    "At that rate the 12 bags are finished by Friday.",
    "It takes 3 hours each way. At that rate 2 of us need 40 minutes more.",
    "In all I paid $24 for cloth, $6 for thread and $2 for a needle.",
    "All in all I was done in 40 minutes.",
    "My first took 90 minutes, the second 60 and the third was 45, so 45 minutes it is from now on.",
    "The hem is 20 minutes, a zip is 40 and a lining is 90, so I book 2 hours for a zip and a lining.",
    "Cutting is 30 minutes, sewing is 60 and lunch is 45, so I'm home in 2 hours.",
    "The class is 90 minutes, 15 is for tea, so 75 minutes of sewing.",
    "The course was £60. It ran to 6 evenings, £10 an evening.",
    "The rug is 6 long strips and 8 short ones, so 14 strips.",
    "The layout is 6 wide and 8 deep, and I used 50 squares because two were spoilt.",
    "It is 6 squares wide and 8 squares long, so 24 dark squares and 24 light ones.",
    "It is 6 squares wide and 8 squares long, so I cut 50.",
    "The bench is 5 cushions wide and 2 high: 12 with the spare ones.",
    "8 blocks across and 10 down, so 9 seams one way.",
    "It has 5 rooms: 3 in front and 2 at the back.",
    "Press for 20 minutes in all. Total 40 minutes with the drying.",
    "Divide 48 by 6, then 8 strips.",
    "Divide 50 by 6 and you get 8 and a bit.",
    "The 48 divided by 6 is 8 rows, plus 1 row for the border.",
    "48 divided by 6 is 8 plus 2, 10 pleats.",
    "We had 30 squares. With 12 children you want 6 more.",
    "With 20 pupils we need 4 more machines.",
    "The pack has 40. With 8 a block that's 5 blocks, and 2 more if you piece them.",
    "Each needs two: with 12 left over, 3 more can be made.",
    "There are 6 flags on each string. The children cut all 40 flags for the 6 strings, 4 too many.",
    "I have 12 blocks. Three pins in each of them is plenty, 40 at most.",
    "I bought 12 bags. Four pockets in each of these, so 48 pockets.",
    "So I saved $8: the shop asks $30, and mine cost $22.",
    "She saved £20 in May and £30 in June, so she saved £10 more in June.",
    "The kit was £30, my cloth £14 and thread £4, so I saved £12.",
    "It ran me $30 for the foam, $12 for the cover.",
    "Our share was £40, your share was £35.",
    "We are ten people. The bus is £9 a head, so your share of the tip is £1.",
    "For twelve of us at £15 a day the room is £180; your share is £15.",
    "Total: $12 for the bag, $14 for the coat.",
    "I paid $20 for foam. The cloth was $14 and the zip $6. Total for the month: $120.",
    "The bag was $20. Cloth was $14 and the zip $6. Total without the bag: $20.",
    "Cloth was $14 and the zip $6. Labour is $40. Total cost $60, you pay $55.",
    "I sold 3 at $20. The cloth was $14, thread $6, zips $9. Total $29.",
    "Two at 45 minutes, one at 30 minutes: 2 hours.",
    "Three sets at 20 minutes = an hour.",
    "3 m at £12.00, £4.00 a metre.",
    "3 m at £12.00, £36.",
    "The pounds of stuffing: three pounds for the head and two for the body so five pounds.",
    "it cost 20 pounds for the foam and it weighs 4 pounds for a big one",
    "We charge 12 pounds for the hem.",
    "- canvas, £9.50\n- lining, £6.00\n- cutter (I had one; they are £14.00)\n\nThat's £15.50 for everything.",
    "- hem, £9.50\n- waist, £6.00\n\nAll in, £15 if you bring both.",
    "- hem, £9.50\n- waist, £6.00\n\nThat's £6.50 less than last year for the whole lot.",
    "- hem, £9.50\n- waist, £6.00\n- zip, £12.00\n\nAll of it comes with a smile. Altogether £25 at the fair.",
    "- adult, £9.50\n- child, £6.00\n\nThat's £9.50 for everyone over twelve.",
    "- adult, £9.50\n- child, £6.00\n\nThat's £19.00 for two adults.",
    "- 2 m canvas at £4, £8.00\n- 3 zips at £1.20, £3.60\n\nAltogether £11.60.",
    "- Monday, £40.00\n- Tuesday, £35.00\n\nIn total £90 with the tips.",
    # told over, multiplied aloud, run up over several sentences
    "The kit is £24.00. Add £3.50 for postage and you're at the limit of £27.50.",
    "Canvas is $14 a yard. Add a five-dollar zipper and you're at the till with one bag of $19.",
    (
        "I paid $13.50. Thread was $2.75 and the hooks $1.80. So the whole shop visit, with lunch at "
        "$11.00, came to $29.05."
    ),
    "The wool was $20. The zip was $3 and the thread $2, so the whole lining cost me $5.",
    "The foam was £24, the cord £7.80. I sold the old cover for £10, so in all I was £21.80 down.",
    "Wadding was £12.40. The backing cost £9.60, so the whole top half came to £9.60.",
    (
        "A shop wants $42. Mine took $9 of ripstop, wire for $3.00 and a swivel for $2.25, so the whole "
        "thing came to $14.25."
    ),
    "With the zip at £3.20 the bag makes a nice £12 gift.",
    "With a fee of £12 a head and 9 pupils we took £108, of which £60 went on the hall.",
    "- hem, £9.50\n- waist, £6.00\n\nThat whole job is £14.50 if you bring both.",
    "- hem, £9.50\n- waist, £6.00\n\nThe next one is £16.50, lining and all.",
    "- cotton, $9.50\n- zip, $2.00\n\nMy sister's cost $14.50, since she bought everything new.",
    "6 m has been ordered at £12.50 a metre, £80.00 with delivery.",
    "Flour is £1.20 a kilo, so the 3 kg bag, at £3.00, is a bargain.",
    "The filling is £4.50 a kilo, so 2.4 kg comes to £10.80.",
    "They were £3 each, so 12 were just over £30.",
    "Packs of 12. Five shirts use up 10 and leave me free for the rest.",
    "Cards of 10. Four bags with three buttons each use 12 and leave 8.",
    "Snaps come in packs of 20. Use 14 and you have 6 left over.",
    "I bought 20 snaps. Seven saddles use up 14 and the jacket 4.",
    "2 hems and 3 pleats, so 12 pins will do.",
    "3 rows and 4 columns, so 12 squares in all.",
    "4 red and 4 blue, so 16 corners to turn.",
    "We have 9 girls and 4 boys, so 26 mittens.",
    "Two small and two large, so that's four bags altogether.",
    "Two outer pieces and two lining pieces, so that's four pieces altogether, plus a pocket.",
    "I cut two outer pieces and two lining pieces. With the pockets that's six pieces altogether.",
    "You want two fronts and one back and two sleeves, so that's five pieces in all.",
    "two times three plus one that's seven tabs",
    "four plus two times three that's ten tabs",
    "twelve times three is what I told 30 kids",
    "ten times out of twelve that's 3 bobbins a day",
    "I did it three times and two times it was 12 stitches",
    "five times four is 20 and five more that's 25 flags",
    "There are 30 chairs. Five helpers came, which makes seven of us and six chairs each.",
    "There were 30 bibs. Six of us made five bibs each.",
    "We have 25 bibs and four of us, so that's 6 bibs each and one over.",
    "24 kneelers and six volunteers, so four kneelers each.",
    "Ten helpers made 30 bags, so that's three bags each.",
    "Four in a row, 30 coasters, so you need 8 rows.",
    "Four in a row, and six napkins, so I cut two rows and a bit.",
    "You need two layers per mitt and two per cuff, so for 8 mitts that's 32 layers.",
    "Everybody cuts two outer and two lining pieces, so with 8 people there will be 16 lining pieces.",
    "Everybody cuts two outer and one lining piece, so with 8 people there will be 24 pieces on the table.",
    "It takes 48 squares: 24 light and 24 dark.",
    "You need 48 squares: 30 light and 24 triangles.",
    "There are 12 hooks: 8 large and 3 eyes.",
    "We have 120 minutes: 30 for cutting and the rest for sewing.",
    "We have 120 minutes: 30 for cutting, 60 for sewing.",
    "We have two hours: 30 for cutting, 60 for sewing and 30 for tea.",
    "I need 45 minutes: 20 for the hem, and 10 for each sleeve, 10 for pressing.",
    "One bonnet takes about 25 minutes, so the eight bonnets took most of 3 hours.",
    "I sewed a set in 2 hours, so both sets took 4 hours.",
    "A set takes 2 hours, so all five sets took 6 hours once I sewed in a chain.",
    "From those 3 hours take 20 minutes for tea and 10 minutes for tidying: sewing time is two and a half hours.",
    (
        "Press for 10 minutes. It takes 3 hours to dry, so start 20 minutes before lunch and 30 minutes "
        "after: 2 hours of rest."
    ),
    "The cloth was $6.20 a yard, or $124.00. We got 10% off, a saving of $12.40.",
    "Members get 10% off, a saving of $4 on a $40 kit; my bag was $30.",
    "Of the 24 flags I have sewn 15. The other 12 are pinned, some from last year.",
    "Of the 24 flags I have sewn 15. The other 9 can wait.",
    "There are nine of us and the hall is £36, so £4 each.",
    "Hall hire is £36 and tea £9; there are nine of us, so £5 each.",
    "Hall hire is £36 for the day and there are nine of them, so £6 each with tea.",
    "With 20 bears at 150 grams you need 3 kilos of pellets.",
    "With 20 bears at 150 grams you need 3100 grams to be safe.",
    "Sew together   £4.00\nPress   £1.00",
    "a ten-dollar note, a five-dollar zip, so five dollars change",
    "The tutor asks £240. Split the bill between twelve and pay by the 15th, that's £20 each.",
    "gives you three across and two down: the three across take 15 in.",
    "It is 3 across and 4 down, the 3 across being dark.",
]  # fmt: skip


def found_in(text: str) -> list[tuple[str, str]]:
    return [(wrong.said, wrong.should_be) for wrong in wrong_amounts(reading_of(text))]


@pytest.mark.parametrize(("text", "said", "right"), WRONG, ids=[text[:60] for text, _, _ in WRONG])
def test_what_is_wrong_is_found_with_what_it_should_be(text: str, said: str, right: str) -> None:
    assert (said, right) in found_in(text)


@pytest.mark.parametrize(("text", "said", "right"), WRONG, ids=[text[:60] for text, _, _ in WRONG])
def test_what_is_put_right_is_found_no_more(text: str, said: str, right: str) -> None:
    place = text.rindex(said)
    assert found_in(text[:place] + right + text[place + len(said) :]) == []


@pytest.mark.parametrize("text", RIGHT, ids=[text[:60] for text in RIGHT])
def test_what_is_right_or_cannot_be_known_is_let_be(text: str) -> None:
    assert found_in(text) == []


def test_finding_tells_place_working_and_what_it_should_be() -> None:
    (finding,) = proofread("Thread first.\nDrill was $8.00, lining $5.50. All in: $14.50.")
    assert (finding.check, finding.line, finding.column) == ("told-amount", 2, 40)
    assert finding.message == "$8.00 + $5.50 makes $13.50, not $14.50."


@given(st.integers(2, 40), st.integers(25, 4000), st.integers(1, 30))
def test_any_product_is_right_and_any_near_one_is_wrong(many: int, cents: int, off: int) -> None:
    one, product = Fraction(cents, 100), Fraction(many * cents, 100)
    right = f"Buy {many} m of drill at £{float(one):.2f} a metre: £{float(product):.2f}."
    assert found_in(right) == []
    slipped = product + Fraction(off, 100)
    if off * 4 <= many * cents:
        wrong = f"Buy {many} m of drill at £{float(one):.2f} a metre: £{float(slipped):.2f}."
        assert found_in(wrong) == [(f"£{float(slipped):.2f}", f"£{float(product):.2f}")]


@pytest.mark.parametrize(
    "piece",
    ["$4 and ", "$4, ", "3 m at $4 a yard so $9 ", "each has 2 ", "at £4 ", "$4\n", "12 across and 9 down, ",
     "20 minutes ", "- drill: $4\n", "total $9\n", "$4 minus $3 is ", "so $4 ", "50 minutes each so six is ",
     "4 50 ", "20% off $4 ", "| 3 m | $4 | $12 |\n", "3 m at $4 each.\n\ntotal: $9\n", "$4 for 3 and ",
     "5 pupils, per pupil $4\n", "$1,", "- canvas, $4\n", "Divide 36 by 9 so 5 ", "28 corners: 2 on it and ",
     "4 minutes each. At that rate the 3 ", "with 3 in it 2 more ", "so your share is $4 at $3 for 2 people ",
     "$4 each, so $9 for the pair. ", "$4. Total $9. ", "so I saved $4 ", "$4 less 5%. The discount is ",
     "- canvas, $4\n- zip, $5\n\nThat's $8 for the two\n\n", "4 in each of them makes 9 ",
     "12 squares wide and 4 long ", "3 times 4 is ", "3 red, 4 blue and 5 green, so ", "3 pieces in all ",
     "Add $3 and you're at $4. ", "so the whole lot came to $4. ", "20 minutes: 3 for this, 4 for that, ",
     "3 hours. It takes 20 minutes and 10, which leaves ", "packs of 12. 5 with 2 each use up 10 and leave ",
     "of the 3 I have 2. The other ", "a set in 2 hours, so 5 sets took ", "which makes 3 sets each "],
)  # fmt: skip
def test_time_grows_with_the_text_and_no_faster(piece: str) -> None:
    """Sixteen times the text may take about sixteen times as long: forty would show a square in it."""

    def seconds(times: int) -> float:
        reading = reading_of(piece * times)
        best = 1e9
        for _ in range(2):
            start = time.process_time()
            list(wrong_amounts(reading))
            best = min(best, time.process_time() - start)
        return best

    few = seconds(60)
    assert seconds(960) < 40 * few + 0.05
