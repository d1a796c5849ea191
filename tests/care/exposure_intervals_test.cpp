#include "care/exposure_intervals.hpp"

#include <algorithm>
#include <random>

#include "care/clinic_made.hpp"

namespace exposure_intervals_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

const std::vector<SubstanceRow> rows{{"mineral oil", Relation::is_a, "hydrocarbons", ""},
                                     {"paraffinum", Relation::same_as, "mineral oil", ""},
                                     {"neoprene", Relation::same_as, "polychloroprene", ""},
                                     {"polychloroprene", Relation::is_a, "synthetic rubber", ""},
                                     {"polychloroprene", Relation::may_contain, "thioureas", ""},
                                     {"thioureas", Relation::is_a, "rubber accelerators", ""}};

const SubstanceTable table{
    Substances{rows},
    {{Material::mineral_oil_gel, "mineral oil", ""}, {Material::neoprene, "neoprene", ""}}};

Item sleeve(const std::string& code, Material material, std::vector<std::string> constituents) {
  auto item = made_item(code, Kind::sleeve);
  item.material = material;
  item.constituents = std::move(constituents);
  return item;
}

Unit worn(const std::string& item, int from_days_ago, std::optional<int> to_days_ago) {
  Unit unit = made_unit(item, from_days_ago);
  if (to_days_ago) {
    unit.ended_on = today - days{*to_days_ago};
    unit.end_reason = EndReason::tear;
  }
  return unit;
}

Exposures exposures(const Clinic& clinic) {
  return exposures_of(clinic, ClinicIndex{clinic}, ana, Side::left, table, today);
}

const Exposure* find(const std::vector<Exposure>& all, const std::string& name) {
  const auto found = std::ranges::find(all, name, &Exposure::name);
  return found == all.end() ? nullptr : &*found;
}

DaySpan ago(int from, int until) {
  return {today - days{from}, today - days{until}};
}

}  // namespace

TEST_CASE("Sets of days are those of counting every day") {
  std::mt19937 random{3};
  const auto some = [&] {
    std::vector<DaySpan> made;
    for (int i = 0; i < 4; ++i) {
      const Date from = today + days{random() % 40};
      made.push_back({from, from + days{random() % 12}});
    }
    return made;
  };
  for (int round = 0; round < 200; ++round) {
    const auto first = some();
    const auto a = united(first);
    const auto b = united(some());
    int in_a = 0;
    for (Date day = today; day < today + days{60}; day += days{1}) {
      CHECK(holds(a, day) == holds(first, day));
      CHECK(holds(common(a, b), day) == (holds(a, day) && holds(b, day)));
      CHECK(holds(without(a, b), day) == (holds(a, day) && !holds(b, day)));
      in_a += holds(a, day) ? 1 : 0;
    }
    CHECK(day_count(a) == in_a);
  }
}

TEST_CASE("A substance is worn from the day after the issue until some days after the end") {
  Clinic clinic = made_clinic(Suspension::sleeve);
  clinic.items.push_back(sleeve("GEL", Material::mineral_oil_gel, {"Paraffinum"}));
  clinic.units = {worn("GEL", 100, 60), worn("GEL", 62, 40), worn("GEL", 10, std::nullopt)};
  const auto made = exposures(clinic);
  const auto* oil = find(made.substances, "mineral oil");
  REQUIRE(oil != nullptr);
  CHECK(oil->spans == DaySpans{ago(99, 40 - carry_over_days), ago(9, -1)});
  CHECK(oil->basis == Basis::declared);
  // Its group goes along, and its other name is not a second substance.
  REQUIRE(find(made.substances, "hydrocarbons") != nullptr);
  CHECK(find(made.substances, "hydrocarbons")->spans == oil->spans);
  CHECK(made.substances.size() == 2);
  CHECK(made.observed == DaySpans{ago(99, -1)});
  REQUIRE(find(made.items, "GEL") != nullptr);
  CHECK(find(made.items, "GEL")->spans == oil->spans);
}

TEST_CASE("What nothing is declared of is assumed from the material, and what it may hold counts") {
  Clinic clinic = made_clinic(Suspension::sleeve);
  clinic.items.push_back(sleeve("RUBBER", Material::neoprene, {}));
  clinic.items.push_back(sleeve("TIRE", Material::other, {"thioureas"}));
  clinic.items.push_back(sleeve("CLOTH", Material::other, {}));
  clinic.units = {worn("RUBBER", 50, std::nullopt), worn("TIRE", 20, 10), worn("CLOTH", 20, 10),
                  worn("GONE", 5, std::nullopt)};
  const auto made = exposures(clinic);
  CHECK(find(made.substances, "polychloroprene")->basis == Basis::assumed);
  CHECK(find(made.substances, "synthetic rubber")->basis == Basis::assumed);
  const auto* thioureas = find(made.substances, "thioureas");
  CHECK(thioureas->basis == Basis::declared);  // by the other part
  CHECK(thioureas->items == std::vector<ItemCode>{{"RUBBER"}, {"TIRE"}});
  CHECK(thioureas->spans == DaySpans{ago(49, -1)});
  // Nothing is known of these, which is said, and they are suspects as parts.
  CHECK(made.not_known == std::vector<ItemCode>{{"CLOTH"}, {"GONE"}});
  CHECK(find(made.items, "GONE") != nullptr);
}

TEST_CASE("Parts in a drawer, away from the skin or on the other side are no exposure") {
  Clinic clinic = made_clinic(Suspension::sleeve);
  clinic.items.push_back(sleeve("GEL", Material::mineral_oil_gel, {}));
  Unit drawer = worn("GEL", 100, std::nullopt);
  drawer.share = 0;
  Unit other_side = worn("GEL", 100, std::nullopt);
  other_side.side = Side::right;
  clinic.units = {drawer, other_side, worn("LOCK", 80, std::nullopt)};
  const auto made = exposures(clinic);
  CHECK(made.substances.empty());
  CHECK(made.items.empty());
  CHECK(made.observed == DaySpans{ago(99, -1)});
}

}  // namespace exposure_intervals_test
