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
    ("You owe me 9 dollars for the drill, 4 for the lining and 2 for thread, so 16 dollars each.", "16 dollars", "15 dollars"),
    ("Cloth €14.20 and cord €3.30, together: €18.50.", "€18.50", "€17.50"),
    ("I spent €1,250.00 on the machine and €150.00 on the table, €1,500.00 in all.", "€1,500.00", "€1,400.00"),
    ("Cutting took 35 minutes, the seams 40, so 85 minutes altogether.", "85 minutes", "75 minutes"),
    ("I would say 1 1/2 hours of cutting, 2 hours on the seams and 2 1/2 hours for the hem, so 7 hours.", "7 hours", "6 hours"),
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
    ("every block has four darks and five lights so times 20 you're cutting 90 dark squares and 100 light ones", "90", "80"),
    ("Two in denim, two in lining, so five panels.", "five", "4"),
    ("Three pieces lie side by side, so 24 pieces make 9 rows.", "9", "8"),
    ("We cut 40 dark squares and 30 light ones so 80 altogether.", "80", "70"),
    # rows
    ("Cost\n  drill, 3 m at £6.50    £19.50\n  cord, 10 m at £0.60    £6.80\n", "£6.80", "£6.00"),
    ("Cost\n  drill, 3 m at £6.50    £19.50\n  cord, 10 m at £0.60    £6.00\n  total    £26.50\n", "£26.50", "£25.50"),
    ("A class of 8 pupils.\n\n  drill    £20.00\n  cord    £8.00\n  total    £28.00\n  per pupil    £3.80\n", "£3.80", "£3.50"),
    ("- drill: €12.00\n- cord: €4.50\n- zip: €2.00\n\n*Total for the bag: €19.50*\n", "€19.50", "€18.50"),
    ("| Drill | 3 m | £6.50 | £18.50 |\n| Cord | 4 m | £1.00 | £4.00 |\n", "£18.50", "£19.50"),
    ("10 children come.\n\n| Drill | £20.00 |\n| Cord | £8.00 |\n| **Total** | **£28.00** |\n\nThat is £2.90 a head.\n", "£2.90", "£2.80"),
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
    "| Item | Qty | Each | Cost |\n|---|---|---|---|\n| Drill | 2 m | £8.00 | £16.00 |\n| Zips | 10 | £0.95 | £9.50 |\n| Total | | | £25.50 |",
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
    "Income\n  tickets, 40 at £3    £120\n  cakes    £45\n  total    £165\nCosts\n  hall    £60\n  tea    £15\n  total    £75\n",
    "Cotton: 2 m\nCost: £14\nTime: 3 hours\nLining: £6\nTotal: £20\n",
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
    ["$4 and ", "$4, ", "3 m at $4 a yard so $9 ", "each has 2 ", "at £4 ", "$4\n", "12 across and 9 down, ", "20 minutes ",
     "- drill: $4\n", "total $9\n", "$4 minus $3 is ", "so $4 ", "50 minutes each so six is ", "4 50 ", "20% off $4 ",
     "| 3 m | $4 | $12 |\n", "3 m at $4 each.\n\ntotal: $9\n", "$4 for 3 and ", "5 pupils, per pupil $4\n", "$1,"],
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
