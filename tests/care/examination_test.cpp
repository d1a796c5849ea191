#include "care/examination.hpp"

#include <algorithm>

#include "care/clinic_made.hpp"

namespace examination_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

const std::vector<SubstanceRow> relations{
    {"white oil", Relation::is_a, "mineral oil", "test"},
    {"polychloroprene", Relation::may_contain, "rubber accelerators", "test"}};
const SubstanceTable table{Substances{relations}, {}};

/// Ana and a second patient both react to mineral oil; Ana wears the liner, the other waits for it.
Clinic two_patients() {
  auto clinic = made_clinic(Suspension::pin);
  clinic.items[0].constituents = {"silicone elastomer"};
  clinic.patients.push_back({{"P-2"}, "", "", std::nullopt, std::nullopt});
  clinic.sensitivities = {{ana, "mineral oil", "redness", "patch test", today - days{30}},
                          {{"P-2"}, "mineral oil", "", "reported", std::nullopt}};
  clinic.units = {made_unit("LINER", 50), made_unit("LINER", 40, "B"), made_unit("PIN", 50)};
  clinic.reservations = {{{"P-2"}, {"LINER"}, "main store", 1, std::nullopt}};
  return clinic;
}

SensitivityDecision decided(Verdict verdict, int days_ago) {
  return {ana,       {"LINER"},         "mineral oil",        verdict, today - days{days_ago},
          "B. Fern", "tried for weeks", std::optional<Date>{}};
}

}  // namespace

TEST_CASE("everyone who has a sensitivity is examined, each item of a side once") {
  const auto clinic = two_patients();
  const auto found = examine(clinic, table, today);
  REQUIRE(found.size() == 3);  // Ana's liner and pin, the liner booked for the other
  CHECK(found[0].item == ItemCode{"LINER"});
  CHECK(found[0].holding == Holding::worn);
  CHECK(found[0].side == Side::left);
  CHECK(found[1].item == ItemCode{"PIN"});
  CHECK(found[2].holding == Holding::booked);
  CHECK_FALSE(found[2].side);
}

TEST_CASE("an item that the catalogue does not know is not declared, never clear") {
  auto clinic = two_patients();
  clinic.units.push_back(made_unit("GONE", 3));
  const auto found = examine(clinic, table, today);
  const auto gone = std::ranges::find(found, ItemCode{"GONE"}, &Examined::item);
  REQUIRE(gone != found.end());
  CHECK(gone->verdict.verdict == Verdict::not_declared);
}

TEST_CASE("pieces of an order count until they have come, those of a cancelled order not") {
  auto clinic = two_patients();
  OrderLine line;
  line.supplier = {"Tern"};
  line.order_ref = "O1";
  line.item = {"SEAL"};
  line.quantity = 1;
  clinic.order_lines = {line};
  OrderPiece piece;
  piece.supplier = {"Tern"};
  piece.order_ref = "O1";
  piece.item = {"SEAL"};
  piece.patient = ana;
  clinic.order_pieces = {piece};
  const auto on_order = [&] {
    return std::ranges::count(examine(clinic, table, today), Holding::on_order,
                              &Examined::holding);
  };
  CHECK(on_order() == 1);
  clinic.order_lines[0].state = OrderState::cancelled;
  CHECK(on_order() == 0);
  clinic.order_lines[0].state = OrderState::placed;
  clinic.order_pieces[0].put_away_on = today;
  CHECK(on_order() == 0);
}

TEST_CASE("a changed constituent tells who is newly affected, and only them") {
  auto clinic = two_patients();
  const auto before = examine(clinic, table, today);
  clinic.items[0].constituents = {"silicone elastomer", "white oil"};
  const auto after = examine(clinic, table, today);
  const auto newly = newly_against(before, after);
  REQUIRE(newly.size() == 2);
  CHECK(newly[0].now.verdict.verdict == Verdict::conflict);
  CHECK(newly[0].now.verdict.path.names == std::vector<std::string>{"white oil", "mineral oil"});
  CHECK(newly[0].before == Verdict::not_declared);  // the table does not know silicone elastomer
  CHECK(newly_against(after, after).empty());
  CHECK(newly_against(after, before).empty());
}

TEST_CASE("a decision answers what it was made about, not what is graver or noted later") {
  auto clinic = two_patients();
  clinic.items[0].constituents = {"mineral oil"};
  const auto first = [&] { return examine(clinic, table, today).front().verdict; };
  CHECK(gravity(first()) == Gravity::stops);
  clinic.decisions = {decided(Verdict::possible_conflict, 10)};
  CHECK_FALSE(first().decided);  // it was graver than what was decided about
  clinic.decisions = {decided(Verdict::conflict, 10)};
  REQUIRE(first().decided);
  CHECK(gravity(first()) == Gravity::ask);
  CHECK(newly_against({}, examine(clinic, table, today)).size() == 1);  // the other patient
  clinic.sensitivities[0].noted_on = today - days{5};
  CHECK_FALSE(first().decided);
  clinic.decisions = {decided(Verdict::conflict, 3)};
  CHECK(first().decided);
  clinic.decisions[0].withdrawn_on = today;
  CHECK_FALSE(first().decided);
}

}  // namespace examination_test
