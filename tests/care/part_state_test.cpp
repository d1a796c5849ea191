#include "care/part_state.hpp"

#include "care/clinic_made.hpp"

namespace part_state_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

StockLevel piece(const std::string& lot, std::optional<Date> use_by,
                 const std::string& place = "main store") {
  return {{{"LINER"}, lot, use_by}, place, 1};
}

std::vector<PieceFault> faults(const Clinic& clinic, const StockLevel& taken,
                               std::optional<int> expected_days = 300) {
  const ClinicIndex index{clinic};
  std::vector<PieceFault> made;
  const std::vector<StockLevel> all{taken};
  for (const auto& found :
       check_pieces(clinic, *index.item({"LINER"}), all, today, expected_days)) {
    made.push_back(found.fault);
  }
  return made;
}

}  // namespace

TEST_CASE("Expired, quarantined and recalled pieces stop; a piece may be used on its last day") {
  using F = std::vector<PieceFault>;
  auto clinic = made_clinic(Suspension::pin);
  CHECK(faults(clinic, piece("A", today - days{1})) == F{PieceFault::expired});
  CHECK(faults(clinic, piece("A", today), std::nullopt).empty());
  CHECK(faults(clinic, piece("A", std::nullopt, "Quarantine")) == F{PieceFault::quarantined});
  clinic.units = {made_unit("LINER", 40, "A")};
  clinic.units[0].ended_on = today;
  clinic.units[0].end_reason = EndReason::recall;
  CHECK(faults(clinic, piece("A", std::nullopt)) == F{PieceFault::recalled});
  CHECK(faults(clinic, piece("B", std::nullopt)).empty());
  clinic.units[0].lot.clear();
  CHECK(faults(clinic, piece("", std::nullopt)).empty());
  CHECK(PieceFinding{PieceFault::recalled, {}}.gravity() == Gravity::stops);
}

TEST_CASE("Short dates, missing dates and lots that are held back elsewhere are asked about") {
  using F = std::vector<PieceFault>;
  auto clinic = made_clinic(Suspension::pin);
  CHECK(faults(clinic, piece("A", today + days{299})) == F{PieceFault::short_dated});
  CHECK(faults(clinic, piece("A", today + days{300})).empty());
  CHECK(faults(clinic, piece("A", today + days{9}), std::nullopt).empty());
  clinic.shelf = {piece("A", std::nullopt, "quarantine")};
  CHECK(faults(clinic, piece("A", std::nullopt)) == F{PieceFault::others_quarantined});
  clinic.shelf.clear();
  clinic.items[0].shelf_life_days = 700;
  CHECK(faults(clinic, piece("A", std::nullopt)) == F{PieceFault::no_use_by});
  CHECK(PieceFinding{PieceFault::no_use_by, {}}.gravity() == Gravity::ask);
}

TEST_CASE("The patient's records are looked at: deceased, no prosthesis, two in use") {
  using F = std::vector<PatientFault>;
  auto clinic = made_clinic(Suspension::pin);
  clinic.units = {made_unit("LINER", 40), made_unit("LINER", 20), made_unit("PIN", 20)};
  const ClinicIndex index{clinic};
  const auto look = [&](const std::string& item, Side side) {
    return check_patient(rules, clinic, index, ana, side, *index.item({item}), today);
  };
  CHECK(look("LINER", Side::left) == F{PatientFault::two_in_use});
  CHECK(look("CUSHION", Side::left).empty());
  CHECK(look("PIN", Side::left).empty());
  CHECK(look("PIN", Side::right) == F{PatientFault::no_prosthesis});
  clinic.units[2].ended_on = today;
  clinic.units[2].end_reason = EndReason::deceased;
  CHECK(look("PIN", Side::left) == F{PatientFault::deceased});
  CHECK(gravity(PatientFault::deceased) == Gravity::stops);
  CHECK(gravity(PatientFault::no_prosthesis) == Gravity::ask);
}

}  // namespace part_state_test
