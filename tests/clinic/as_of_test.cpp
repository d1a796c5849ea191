#include <doctest/doctest.h>

#include "clinic/clinic.hpp"

namespace as_of_test {

using namespace sparewell;

TEST_CASE("Nothing that happened after the day is known on the day") {
  const Date today = make_date(2026, 6, 1);
  Clinic clinic;
  Unit ended_later;
  ended_later.issued_on = today - days{10};
  ended_later.ended_on = today + days{5};
  ended_later.end_reason = EndReason::hole;
  Unit issued_later;
  issued_later.issued_on = today + days{1};
  Unit ended_today = ended_later;
  ended_today.ended_on = today;
  clinic.units = {ended_later, issued_later, ended_today};
  OrderLine received_later;
  received_later.ordered_on = today - days{3};
  received_later.quantity = 4;
  received_later.received_on = today + days{1};
  received_later.received_quantity = 4;
  clinic.order_lines = {received_later};

  Reaction later;
  later.began_on = today + days{1};
  Reaction lasting;
  lasting.began_on = today - days{3};
  lasting.ended_on = today + days{2};
  clinic.reactions = {later, lasting};

  const Clinic known = as_of(clinic, today);

  REQUIRE(known.units.size() == 2);
  CHECK_FALSE(known.units[0].ended_on);
  CHECK_FALSE(known.units[0].end_reason);
  CHECK(known.units[1].end_reason == EndReason::hole);
  REQUIRE(known.reactions.size() == 1);
  CHECK_FALSE(known.reactions[0].ended_on);
  CHECK(known.order_lines[0].outstanding() == 4);
}

TEST_CASE("Records are found by reference, and a missing one is said to be missing") {
  Clinic clinic;
  Item item;
  item.code = {"L-1"};
  clinic.items = {item};
  const ClinicIndex index{clinic};
  CHECK(index.item({"L-1"}) == &clinic.items[0]);
  CHECK(index.item({"L-2"}) == nullptr);
}

}  // namespace as_of_test
