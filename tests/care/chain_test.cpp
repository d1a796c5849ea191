#include "care/chain.hpp"

#include "care/attachment.hpp"
#include "care/clinic_made.hpp"

namespace chain_test {

using namespace sparewell;
using namespace sparewell::care;
using namespace sparewell::care::testing;

namespace {

/// What stays missing when `item` is handed to Ana, who wears `worn`.
std::vector<Function> missing(Suspension suspension, const std::string& item,
                              const std::vector<std::string>& worn) {
  auto clinic = made_clinic(suspension);
  for (const auto& code : worn) clinic.units.push_back(made_unit(code, 10));
  const ClinicIndex index{clinic};
  return missing_after(rules, *index.item({item}), worn_on(clinic, index, ana, Side::left, today));
}

std::vector<Mismatch> mismatches(Suspension suspension, const std::string& item,
                                 const std::vector<std::string>& worn) {
  auto clinic = made_clinic(suspension);
  for (const auto& code : worn) clinic.units.push_back(made_unit(code, 10));
  const ClinicIndex index{clinic};
  std::vector<Mismatch> made;
  const auto on_side = worn_on(clinic, index, ana, Side::left, today);
  for (const auto& found : check_attachment(rules, *index.item({item}), on_side)) {
    made.push_back(found.mismatch);
  }
  return made;
}

}  // namespace

TEST_CASE("Each suspension says what of its chain is still missing") {
  using F = std::vector<Function>;
  CHECK(missing(Suspension::pin, "PIN", {"LINER"}) == F{Function::lock});
  CHECK(missing(Suspension::pin, "LOCK", {"LINER", "PIN"}).empty());
  CHECK(missing(Suspension::lanyard, "LINER", {}) == F{Function::lock});
  CHECK(missing(Suspension::sleeve, "SLEEVE", {}) == F{Function::cushion_liner});
  CHECK(missing(Suspension::suction, "CUSHION", {"SLEEVE"}) == F{Function::valve});
  CHECK(missing(Suspension::suction, "SEAL", {}) == F{Function::valve});
  CHECK(missing(Suspension::vacuum, "VALVE", {"CUSHION", "SLEEVE"}) == F{Function::pump});
  CHECK(missing(Suspension::vacuum, "PUMP", {"SEAL", "VALVE"}).empty());
  CHECK(missing(Suspension::belt, "CUSHION", {}).empty());
}

TEST_CASE("Only what is in use on that side on that day counts") {
  auto clinic = made_clinic(Suspension::pin);
  clinic.units = {made_unit("PIN", 50), made_unit("LINER", 50), made_unit("LINER", -5)};
  clinic.units[0].ended_on = today;
  clinic.units[1].side = Side::right;
  const ClinicIndex index{clinic};
  CHECK(worn_on(clinic, index, ana, Side::left, today).items.empty());
  CHECK(worn_on(clinic, index, ana, Side::left, today).prosthesis != nullptr);
  CHECK(worn_on(clinic, index, ana, Side::right, today).prosthesis == nullptr);
  clinic.prostheses[0].ended_on = today;
  CHECK(worn_on(clinic, index, ana, Side::left, today).prosthesis == nullptr);
}

TEST_CASE("Threads of pin, lock and locking liner must be one, however they are written") {
  using M = std::vector<Mismatch>;
  CHECK(mismatches(Suspension::pin, "LOCK", {"LINER", "PIN"}).empty());
  CHECK(mismatches(Suspension::pin, "SMALL", {"LINER", "PIN"}) ==
        M{Mismatch::thread_differs, Mismatch::thread_differs});
  // Another lock is what it replaces.
  CHECK(mismatches(Suspension::pin, "SMALL", {"LOCK"}).empty());
  auto clinic = made_clinic(Suspension::pin);
  clinic.items[1].thread.clear();
  clinic.units = {made_unit("PIN", 5)};
  const ClinicIndex index{clinic};
  const auto found =
      check_attachment(rules, *index.item({"LOCK"}), worn_on(clinic, index, ana, Side::left, today));
  REQUIRE(found.size() == 1);
  CHECK(found[0].mismatch == Mismatch::thread_not_stated);
  CHECK(found[0].other == index.item({"PIN"}));
}

TEST_CASE("The way of which most is there is the one that is worn") {
  using F = std::vector<Function>;
  // A sleeve over a liner with seal is allowed, and does not make it the other way.
  CHECK(missing(Suspension::vacuum, "SLEEVE", {"SEAL", "VALVE"}) == F{Function::pump});
  CHECK(rules.has_work(Function::sleeve, Suspension::suction));
  CHECK_FALSE(rules.has_work(Function::sleeve, Suspension::belt));
}

TEST_CASE("Materials that need looking after are a note where they meet, either way round") {
  auto with_pair = rules;
  with_pair.materials = {{Kind::liner, Material::silicone, Kind::sleeve, Material::silicone,
                          "look at the seams", "test"}};
  auto clinic = made_clinic(Suspension::sleeve);
  clinic.units = {made_unit("CUSHION", 5)};
  const ClinicIndex index{clinic};
  const auto worn = worn_on(clinic, index, ana, Side::left, today);
  const auto found = check_attachment(with_pair, *index.item({"SLEEVE"}), worn);
  REQUIRE(found.size() == 1);
  CHECK(found[0].mismatch == Mismatch::materials_meet);
  CHECK(gravity(found[0].mismatch) == Gravity::note);
  CHECK(found[0].pair->advice == "look at the seams");
}

TEST_CASE("Liners and parts must belong to the suspension") {
  using M = std::vector<Mismatch>;
  CHECK(mismatches(Suspension::sleeve, "LINER", {}) == M{Mismatch::liner_not_for_this});
  CHECK(mismatches(Suspension::pin, "CUSHION", {}) == M{Mismatch::liner_not_for_this});
  CHECK(mismatches(Suspension::sleeve, "PIN", {}) == M{Mismatch::not_in_suspension});
  CHECK(mismatches(Suspension::suction, "PUMP", {}) == M{Mismatch::not_in_suspension});
  CHECK(mismatches(Suspension::lanyard, "LOCK", {"LINER"}).empty());
  CHECK(mismatches(Suspension::suction, "SEAL", {}).empty());
}

}  // namespace chain_test
