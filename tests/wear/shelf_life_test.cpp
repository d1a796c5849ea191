#include "wear/shelf_life.hpp"

#include <doctest/doctest.h>

#include "wear/clinic_fit.hpp"
#include "wear/small_clinic.hpp"
#include "wear/unit_life.hpp"

namespace shelf_life_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

Unit of_lot(std::string lot) {
  Unit made = unit("P", "L", 10);
  made.lot = std::move(lot);
  return made;
}

}  // namespace

TEST_CASE("A unit may be used until the date of its lot, else for its shelf life at the latest") {
  Clinic clinic = small_clinic();
  Item& liner = clinic.items[0];
  clinic.shelf = {{{{"L"}, "A", day_zero + days{300}}, "cellar", 0},
                  {{{"L"}, "A", day_zero + days{200}}, "main store", 2},
                  {{{"G"}, "B", day_zero + days{50}}, "main store", 1},
                  {{{"L"}, "", day_zero + days{5}}, "main store", 1}};
  const UseBys use_bys{clinic};
  CHECK(use_bys.of(of_lot("A"), liner) == UseBy{day_zero + days{200}, false});
  CHECK_FALSE(use_bys.of(of_lot("B"), liner).has_value());  // a lot of another item
  CHECK_FALSE(use_bys.of(of_lot(""), liner).has_value());
  liner.shelf_life_days = 730;
  CHECK(use_bys.of(of_lot("B"), liner) == UseBy{day_zero + days{740}, true});
  CHECK(use_bys.of(of_lot("A"), liner) == UseBy{day_zero + days{200}, false});
}

TEST_CASE("A unit in the drawer does not age, but its shelf life runs") {
  Clinic clinic = small_clinic();
  clinic.items[0].shelf_life_days = 730;
  Unit spare = unit("P", "L", 0);
  spare.share = 0;
  clinic.units = {spare};
  const Date later = day_zero + days{700};
  const auto fitted = fit_clinic(clinic, plain_priors(), later);
  const auto lives = lives_of_units_in_use(clinic, fitted, later);
  REQUIRE(lives.size() == 1);
  CHECK(lives[0].life.wear_age_days() == 0);
  CHECK(lives[0].life.chance_after(5000) == 0);
  CHECK(UseBys{clinic}.of(spare, clinic.items[0])->day == day_zero + days{730});
}

}  // namespace shelf_life_test
