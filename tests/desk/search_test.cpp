// Searching everything, and where scanned labels lead.
#include <doctest/doctest.h>

#include "desk/sample_day.hpp"
#include "desk/search/scan_burst.hpp"
#include "desk/search/scanned.hpp"
#include "desk/search/search_page.hpp"

namespace search_test {

using namespace sparewell;
using namespace sparewell::desk;

namespace {

DayPtr searched_day() {
  return std::make_shared<const Day>(test_assessment());
}

using Moment = ScanBurst::Moment;

void send(ScanBurst& burst, std::string_view text, int gap_ms, int& at_ms) {
  for (const char key : text) burst.key(key, Moment{at_ms += gap_ms});
}

}  // namespace

TEST_CASE("What answers to all words is found, an exact reference first") {
  const SearchIndex index{searched_day()};
  const auto hits = index.find("p-1");
  REQUIRE_FALSE(hits.hits.empty());
  CHECK(hits.hits[0].kind == HitKind::patient);
  CHECK(hits.hits[0].exact);
  CHECK(hits.hits[0].there.to == Destination::To::patient);
  CHECK(hits.hits[0].there.patient.text == "P-1");
  const auto by_name = index.find("fieldmouse ana");
  REQUIRE(by_name.hits.size() == 1);
  CHECK(by_name.hits[0].title.starts_with("P-1"));
  CHECK(index.find("").hits.empty());
  CHECK(index.find("nobody at all").hits.empty());
}

TEST_CASE("A part is found by its serial, in use or ended") {
  const auto day = searched_day();
  const SearchIndex index{day};
  const auto& units = day->clinic().units;
  for (std::size_t i = 0; i < units.size(); ++i) {
    if (units[i].serial.empty()) continue;
    CAPTURE(units[i].serial);
    const auto hits = index.find(units[i].serial);
    const auto found = std::ranges::find_if(hits.hits, [&](const Hit& hit) {
      return hit.kind == HitKind::part && hit.there.unit == i;
    });
    REQUIRE(found != hits.hits.end());
    CHECK(found->there.patient == units[i].patient);
  }
}

TEST_CASE("At most so many are listed, and how many more there are is said") {
  const SearchIndex index{searched_day()};
  const auto all = index.find("-");
  REQUIRE(all.hits.size() > 2);
  const auto few = index.find("-", 2);
  CHECK(few.hits.size() == 2);
  CHECK(few.more == all.hits.size() - 2);
}

TEST_CASE("The only exact hit is where Enter leads, and rows lead to theirs") {
  SearchPage page;
  page.show(std::make_shared<const SearchIndex>(searched_day()));
  page.type("P-1");
  const auto there = page.entered();
  REQUIRE(there);
  CHECK(there->patient.text == "P-1");
  page.type("-");
  CHECK_FALSE(page.entered());
  REQUIRE(page.table().size() > 1);
  CHECK(page.there(page.table().at(1).id));
  CHECK_FALSE(page.there("no row"));
  page.type("nobody");
  CHECK(page.words().starts_with("Nothing answers"));
}

TEST_CASE("What looks like a barcode is told from words and short numbers") {
  CHECK(looks_scanned("]C10104012345678901"));
  CHECK(looks_scanned("(01)04012345678901(10)A1"));
  CHECK(looks_scanned("+A99912345/$$52001510X3"));
  CHECK(
      looks_scanned("0104012345678901"
                    "10A1"));
  CHECK(looks_scanned("4012345678901"));
  CHECK_FALSE(looks_scanned("1005495"));
  CHECK_FALSE(looks_scanned("PO-26-0701"));
  CHECK_FALSE(looks_scanned("Ana Fieldmouse"));
}

TEST_CASE("A label leads to the part that bears its serial, else to the lot, else to the item") {
  auto made = test_assessment();
  auto& clinic = made.clinic;
  REQUIRE_FALSE(clinic.items.empty());
  REQUIRE_FALSE(clinic.units.empty());
  auto& unit = clinic.units.front();
  for (auto& item : clinic.items) {
    if (item.code == unit.item) item.gtin = "04012345678901";
  }
  unit.serial = "SER77";
  clinic.shelf.push_back({{unit.item, "LOT88", std::nullopt}, "main store", 2});
  const Day day{std::move(made)};
  const auto item = day.clinic().units.front().item;
  const auto part = where_label_leads(day, "(01)04012345678901(21)SER77");
  REQUIRE(part);
  REQUIRE(part->hits.size() == 1);
  CHECK(part->hits[0].there.unit == 0);
  CHECK(part->doubt.empty());
  const auto lot = where_label_leads(day, "(01)04012345678901(10)LOT88");
  REQUIRE(lot);
  REQUIRE(lot->hits.size() == 1);
  CHECK(lot->hits[0].there.to == Destination::To::shelf);
  CHECK(lot->hits[0].there.lot == "LOT88");
  CHECK(lot->doubt.empty());
  const auto alone = where_label_leads(day, "04012345678901");
  REQUIRE(alone);
  CHECK(alone->hits.at(0).there.item == item);
  CHECK(alone->hits.at(0).there.lot.empty());
  CHECK(alone->doubt.empty());
  // Of an item that nobody here has.
  const auto unknown = where_label_leads(day, "(01)04098765432101");
  REQUIRE_FALSE(unknown);
  CHECK_FALSE(unknown.error().sentence.empty());
}

TEST_CASE("A label of which only something near is here says so, and waits for a person") {
  auto made = test_assessment();
  auto& unit = made.clinic.units.front();
  for (auto& item : made.clinic.items) {
    if (item.code == unit.item) item.gtin = "04012345678901";
  }
  unit.serial = "SER77";
  unit.lot = "LOT99";
  const auto day = std::make_shared<const Day>(std::move(made));
  SearchPage page;
  page.show(std::make_shared<const SearchIndex>(day));

  SUBCASE("a serial that no part bears") {
    page.type("(01)04012345678901(21)OTHER");
    CHECK(page.words().find("No part here bears serial OTHER") != std::string::npos);
    CHECK(page.there("0")->to == Destination::To::shelf);
  }
  SUBCASE("a lot that is with a patient only") {
    page.type("(01)04012345678901(10)LOT99");
    CHECK(page.words().find("No piece of lot LOT99 is on the shelf") != std::string::npos);
    CHECK(page.there("0")->unit == 0);
  }
  SUBCASE("a lot that was never here") {
    page.type("(01)04012345678901(10)LOT0");
    CHECK(page.words().find("lot LOT0") != std::string::npos);
    CHECK(page.there("0")->item == day->clinic().units.front().item);
  }
  SUBCASE("the serial of a part whose item number the catalogue lacks") {
    page.type("(01)04098765432101(21)SER77");
    CHECK(page.words().find("04098765432101") != std::string::npos);
    CHECK(page.there("0")->unit == 0);
  }
  REQUIRE(page.table().size() == 1);
  CHECK_FALSE(page.entered());
}

TEST_CASE("Lots and serials are told apart by the separator that a scanner sends") {
  auto made = test_assessment();
  auto& unit = made.clinic.units.front();
  for (auto& item : made.clinic.items) {
    if (item.code == unit.item) item.gtin = "04012345678901";
  }
  unit.serial = "SER77";
  const Day day{std::move(made)};
  // GS1 General Specifications: FNC1 ends a value of variable length, and is sent as GS (from
  // memory).
  const auto part = where_label_leads(day,
                                      "]d2010401234567890110LOT1\x1D"
                                      "21SER77");
  REQUIRE(part);
  CHECK(part->hits.at(0).there.unit == 0);
  CHECK(part->doubt.empty());
}

TEST_CASE("A reference of two words is exact as a whole") {
  auto made = test_assessment();
  OrderLine line;
  line.order_ref = "PO 26 7";
  made.clinic.order_lines.push_back(line);
  SearchPage page;
  page.show(std::make_shared<const SearchIndex>(std::make_shared<const Day>(std::move(made))));
  page.type("po 26 7 ");
  REQUIRE(page.entered());
  CHECK(page.entered()->order->ref == "PO 26 7");
}

TEST_CASE("A scanner types faster than a person, and ends with Enter") {
  ScanBurst burst;
  int at = 1000;
  send(burst, "0104012345678901", 5, at);
  CHECK(burst.entered(Moment{at + 5}) == "0104012345678901");
  CHECK(burst.entered(Moment{at + 6}).empty());
  send(burst, "fieldmouse", 120, at);
  CHECK(burst.entered(Moment{at + 120}).empty());
  // A person's keys before a scan do not belong to it.
  send(burst, "ana", 150, at);
  at += 500;
  send(burst, "1005495", 8, at);
  CHECK(burst.entered(Moment{at + 8}) == "1005495");
  // Two quick keys and Enter are no scan.
  at += 500;
  send(burst, "ok", 10, at);
  CHECK(burst.entered(Moment{at + 10}).empty());
  send(burst, "12345678", 5, at);
  burst.broken();
  CHECK(burst.entered(Moment{at + 5}).empty());
}

}  // namespace search_test
