#include "care/alternatives.hpp"

#include "care/clinic_made.hpp"

namespace alternatives_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

const SubstanceTable table{
    Substances{std::vector<SubstanceRow>{{"white oil", Relation::is_a, "mineral oil", "test"},
                                         {"silicone elastomer", Relation::is_a, "silicones", "test"}}},
    {}};

Item liner(const std::string& code, Material material, double from, const std::string& constituent,
           int cents) {
  auto item = made_item(code, Kind::liner, Attachment::locking, "M10");
  item.material = material;
  item.size_min_cm = from;
  item.size_max_cm = from + 2;
  item.size_at_cm = 4;
  item.constituents = {constituent};
  item.unit_cost = Money{cents, {"EUR"}};
  item.currency = {"EUR"};
  return item;
}

/// Ana, 23.1 cm, reacts to mineral oil and wears a gel liner with its pin.
Clinic made() {
  auto clinic = made_clinic(Suspension::pin);
  clinic.settings.currency = {"EUR"};
  clinic.items = {liner("WORN", Material::mineral_oil_gel, 22, "white oil", 10000),
                  liner("DEAR", Material::silicone, 22, "silicone elastomer", 50000),
                  liner("CHEAP", Material::silicone, 22, "silicone elastomer", 40000),
                  liner("OTHER", Material::urethane, 22, "unheard of", 100),
                  liner("OIL", Material::mineral_oil_gel, 22, "white oil", 100),
                  liner("BIG", Material::silicone, 26, "silicone elastomer", 100),
                  liner("THREAD", Material::silicone, 22, "silicone elastomer", 100),
                  made_item("CUSHION", Kind::liner, Attachment::cushion),
                  made_item("PIN", Kind::pin, Attachment::none, "M10"),
                  made_item("LOCK", Kind::lock, Attachment::none, "M10"),
                  made_item("LOCK8", Kind::lock, Attachment::none, "M8")};
  clinic.items[6].thread = "M8";
  clinic.sensitivities = {{ana, "mineral oil", "redness", "patch test", std::nullopt}};
  clinic.measurements = {{ana, Side::left, today, 4, 23.1}};
  clinic.units = {made_unit("WORN", 200), made_unit("PIN", 200)};
  return clinic;
}

Alternatives of(const Clinic& clinic, const Item* instead_of, const SupplyOfItem& supply,
                Function function = Function::locking_liner) {
  return alternatives(clinic, {ana, Side::left, instead_of, function, today}, rules, table, supply);
}

std::vector<std::string> codes(const Alternatives& found) {
  std::vector<std::string> made;
  for (const auto& each : found.found) made.push_back(each.item->code.text);
  return made;
}

const SupplyOfItem nothing = [](const Item&) { return ItemSupply{}; };

}  // namespace

TEST_CASE("what suits comes before what has to be asked about, and what does not suit is left out") {
  const auto clinic = made();
  const auto found = of(clinic, &clinic.items[0], nothing);
  CHECK(codes(found) == std::vector<std::string>{"CHEAP", "DEAR", "OTHER"});
  CHECK(found.left_out.conflict == 1);  // OIL
  CHECK(found.left_out.size == 1);      // BIG
  CHECK(found.left_out.thread == 1);    // THREAD, beside the pin that stays worn
  CHECK(found.found[2].verdict.verdict == Verdict::not_declared);
  // The lock that the pin needs is missing whichever liner is worn.
  CHECK(found.found[0].missing == std::vector<Function>{Function::lock});
}

TEST_CASE("what lies on the shelf comes before price, and price counts for each year of wear") {
  const auto clinic = made();
  const auto on_shelf = [](const Item& item) {
    return ItemSupply{item.code.text == "DEAR" ? 2 : 0, std::nullopt};
  };
  CHECK(codes(of(clinic, &clinic.items[0], on_shelf)).front() == "DEAR");
  const auto lasts = [](const Item& item) {
    return ItemSupply{1, item.code.text == "DEAR" ? 400 : 300};
  };
  // 500 EUR for 400 days is less than 400 EUR for 300 days.
  CHECK(codes(of(clinic, &clinic.items[0], lasts)).front() == "DEAR");
}

TEST_CASE("a decided conflict may be worn again, after what needs no decision") {
  auto clinic = made();
  clinic.decisions = {{ana, {"OIL"}, "mineral oil", Verdict::conflict, today, "B. Fern", "tried", {}}};
  const auto found = of(clinic, &clinic.items[0], nothing);
  CHECK(codes(found) == std::vector<std::string>{"CHEAP", "DEAR", "OIL", "OTHER"});
  CHECK(found.left_out.conflict == 0);
}

TEST_CASE("a missing member is looked for by what it has to do") {
  const auto clinic = made();
  const auto found = of(clinic, nullptr, nothing, Function::lock);
  CHECK(codes(found) == std::vector<std::string>{"LOCK"});
  CHECK(found.left_out.thread == 1);  // LOCK8
  CHECK(found.found[0].missing.empty());
}

TEST_CASE("without a measurement nothing is taken to fit without a question") {
  auto clinic = made();
  clinic.measurements.clear();
  const auto found = of(clinic, &clinic.items[0], nothing);
  CHECK(found.found.front().fit.fit == Fit::not_known);
  CHECK(found.left_out.size == 0);
}

}  // namespace alternatives_test
