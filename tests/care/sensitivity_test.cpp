#include "care/sensitivity.hpp"

#include "care/clinic_made.hpp"

namespace sensitivity_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

const std::vector<SubstanceRow> rows{
    {"mineral oil", Relation::is_a, "petrolatum-type hydrocarbons", ""},
    {"white oil", Relation::same_as, "mineral oil", ""},
    {"mercaptobenzothiazole", Relation::is_a, "rubber accelerators", ""},
    {"thiurams", Relation::is_a, "rubber accelerators", ""},
    {"polychloroprene", Relation::may_contain, "rubber accelerators", ""},
    {"brass", Relation::is_a, "metals", ""},
    {"brass", Relation::may_contain, "nickel", ""},
    {"nickel", Relation::is_a, "metals", ""},
    {"titanium", Relation::is_a, "metals", ""}};

const SubstanceTable table{
    Substances{rows},
    {{Material::mineral_oil_gel, "mineral oil", ""}, {Material::neoprene, "polychloroprene", ""}}};

Sensitivity to(const std::string& substance) {
  return {ana, substance, "redness", "patch test", std::nullopt};
}

SensitivityVerdict judge(Material material, std::vector<std::string> constituents,
                         const std::string& substance) {
  auto item = made_item("X", Kind::sleeve);
  item.material = material;
  item.constituents = std::move(constituents);
  const std::vector<Sensitivity> recorded{to(substance), {{"P-2"}, "nickel", "", "", {}}};
  return check_sensitivities(item, ana, recorded, table).front();
}

}  // namespace

TEST_CASE("A declared constituent that is the substance, or a kind of it, conflicts") {
  const auto same = judge(Material::other, {"Mineral-Oil"}, "mineral oil");
  CHECK(same.verdict == Verdict::conflict);
  CHECK(same.path.names == std::vector<std::string>{"mineral oil"});
  const auto kind = judge(Material::other, {"White Oil"}, "Petrolatum-type hydrocarbons");
  CHECK(kind.verdict == Verdict::conflict);
  CHECK(kind.path.names ==
        std::vector<std::string>{"white oil", "mineral oil", "petrolatum type hydrocarbons"});
  CHECK(gravity(kind.verdict) == Gravity::stops);
  // A name that no table has is still compared with itself.
  CHECK(judge(Material::other, {"Zyx"}, "zyx").verdict == Verdict::conflict);
}

TEST_CASE("A group, a residue and an assumption are possible conflicts") {
  const auto group = judge(Material::other, {"rubber accelerators"}, "mercaptobenzothiazole");
  CHECK(group.verdict == Verdict::possible_conflict);
  CHECK(group.upwards);
  CHECK(judge(Material::metal, {"brass"}, "nickel").verdict == Verdict::possible_conflict);
  // It may hold the whole group, so each of the group.
  CHECK(judge(Material::other, {"polychloroprene"}, "mercaptobenzothiazole").verdict ==
        Verdict::possible_conflict);
  const auto assumed = judge(Material::mineral_oil_gel, {}, "mineral oil");
  CHECK(assumed.verdict == Verdict::possible_conflict);
  CHECK(assumed.assumed);
  CHECK(judge(Material::neoprene, {}, "thiurams").verdict == Verdict::possible_conflict);
}

TEST_CASE("Relatives under one group do not conflict") {
  CHECK(judge(Material::metal, {"titanium"}, "nickel").verdict == Verdict::none_known);
  CHECK(judge(Material::other, {"thiurams"}, "mercaptobenzothiazole").verdict ==
        Verdict::none_known);
}

TEST_CASE("Missing data is never none known") {
  CHECK(judge(Material::silicone, {}, "nickel").verdict == Verdict::not_declared);
  const auto unknown = judge(Material::other, {"titanium", "secret blend"}, "nickel");
  CHECK(unknown.verdict == Verdict::not_declared);
  CHECK(unknown.unknown == std::vector<std::string>{"secret blend"});
  CHECK(judge(Material::other, {"titanium"}, "never heard of").verdict == Verdict::not_declared);
  const auto nothing =
      check_sensitivities(made_item("X", Kind::liner), ana, std::vector<Sensitivity>{}, table);
  REQUIRE(nothing.size() == 1);
  CHECK(nothing[0].verdict == Verdict::nothing_recorded);
  CHECK(gravity(Verdict::nothing_recorded) == Gravity::ask);
  CHECK(gravity(Verdict::not_declared) == Gravity::ask);
}

TEST_CASE("The gravest verdict stands first, one for each recorded substance") {
  auto item = made_item("X", Kind::liner);
  item.constituents = {"titanium", "mineral oil"};
  const std::vector<Sensitivity> recorded{to("nickel"), to("mineral oil"), to("thiurams")};
  const auto made = check_sensitivities(item, ana, recorded, table);
  REQUIRE(made.size() == 3);
  CHECK(made[0].verdict == Verdict::conflict);
  CHECK(made[0].recorded.substance == "mineral oil");
  CHECK(made[2].verdict == Verdict::none_known);
}

}  // namespace sensitivity_test
