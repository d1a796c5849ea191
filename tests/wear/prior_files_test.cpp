#include <doctest/doctest.h>

#include "wear/clinic_fit.hpp"
#include "wear/prior_check.hpp"
#include "wear/small_clinic.hpp"
#include "wear/table_file.hpp"

namespace prior_files_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

using Row = std::vector<std::string>;

Factor factor_named(const std::string& name) {
  for (std::size_t i = 0; i < factor_count; ++i) {
    if (factor_name(static_cast<Factor>(i)) == name) return static_cast<Factor>(i);
  }
  FAIL("no factor is named " << name);
  return Factor::activity;
}

PriorTable shipped_priors() {
  PriorTable priors;
  auto lives = read_table("resources/wear-priors/lives.csv");
  CHECK(lives.front() ==
        Row{"kind", "material", "median_days", "median_spread", "shape", "shape_spread", "source"});
  lives.erase(lives.begin());
  for (const Row& row : lives) {
    REQUIRE(row.size() == 7);
    std::optional<Material> material;
    if (!row[1].empty()) material = parse_word<Material>(row[1]).value();
    priors.lives.push_back({parse_word<Kind>(row[0]).value(), material, std::stod(row[2]),
                            std::stod(row[3]), std::stod(row[4]), std::stod(row[5]), row[6]});
  }
  auto factors = read_table("resources/wear-priors/factors.csv");
  CHECK(factors.front() == Row{"kind", "factor", "life_ratio", "spread", "source"});
  factors.erase(factors.begin());
  for (const Row& row : factors) {
    REQUIRE(row.size() == 5);
    priors.factors.push_back({parse_word<Kind>(row[0]).value(), factor_named(row[1]),
                              std::stod(row[2]), std::stod(row[3]), row[4]});
  }
  auto persons = read_table("resources/wear-priors/persons.csv");
  CHECK(persons.front() == Row{"kind", "variance", "spread", "source"});
  persons.erase(persons.begin());
  for (const Row& row : persons) {
    REQUIRE(row.size() == 4);
    priors.persons.push_back(
        {parse_word<Kind>(row[0]).value(), std::stod(row[1]), std::stod(row[2]), row[3]});
  }
  auto items = read_table("resources/wear-priors/items.csv");
  CHECK(items.front() == Row{"kind", "spread", "spread_of_spread", "source"});
  items.erase(items.begin());
  for (const Row& row : items) {
    REQUIRE(row.size() == 4);
    priors.items.push_back(
        {parse_word<Kind>(row[0]).value(), std::stod(row[1]), std::stod(row[2]), row[3]});
  }
  auto endings = read_table("resources/wear-priors/endings.csv");
  CHECK(endings.front() == Row{"kind", "reason", "per_year", "weight_years", "source"});
  endings.erase(endings.begin());
  for (const Row& row : endings) {
    REQUIRE(row.size() == 5);
    priors.endings.push_back({parse_word<Kind>(row[0]).value(),
                              parse_word<EndReason>(row[1]).value(), std::stod(row[2]),
                              std::stod(row[3]), row[4]});
  }
  return priors;
}

}  // namespace

TEST_CASE("The shipped priors are complete, sane and sourced") {
  const auto checked = check_priors(shipped_priors());
  CHECK_MESSAGE(checked.has_value(), (checked ? "" : checked.error().sentence));
}

TEST_CASE("The shipped priors put a new clinic's liners and sleeves where practice puts them") {
  // Liners 6 to 12 months, gel sleeves 3 to 6 months: common practice, no source.
  const ClinicLife fitted = fit_clinic(small_clinic(), shipped_priors(), day_zero);
  const auto median = [&](Kind kind, Material material) {
    const KindLife& life = fitted.kinds.at(kind);
    return scale_days(life, material) * std::pow(0.6931471805599453, 1 / life.shape);
  };
  CHECK(median(Kind::liner, Material::silicone) > 182);
  CHECK(median(Kind::liner, Material::silicone) < 366);
  CHECK(median(Kind::liner, Material::mineral_oil_gel) > 182);
  CHECK(median(Kind::sleeve, Material::mineral_oil_gel) > 90);
  CHECK(median(Kind::sleeve, Material::mineral_oil_gel) < 183);
}

}  // namespace prior_files_test
