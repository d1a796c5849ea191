/// Simulated clinics with and without a bad lot, judged by the law that is fitted to them.
#include <cmath>
#include <random>

#include <doctest/doctest.h>

#include "wear/small_clinic.hpp"
#include "wear/surprises.hpp"

namespace surprises_recovery_test {

using namespace sparewell;
using namespace sparewell::wear;
using namespace sparewell::testing;

namespace {

constexpr int last_day = 1000;
constexpr int lot_size = 8;
const std::string bad_lot = "lot 20";

/// Sixty patients with liners one after another, from lots of eight that are opened in turn. Lives
/// are Weibull with shape 2 and scale 300; one in seven is lost before. In a clinic with a bad lot
/// its liners last a fifth as long.
Clinic simulated(std::minstd_rand0& random, bool with_bad_lot) {
  const auto uniform = [&] { return static_cast<double>(random()) / 2147483647.0; };
  Clinic clinic = small_clinic();
  std::vector<int> due(60);
  for (int& first : due) first = static_cast<int>(200 * uniform());
  int handed_out = 0;
  for (int today = 0; today < last_day; ++today) {
    for (std::size_t patient = 0; patient < due.size(); ++patient) {
      if (due[patient] != today) continue;
      const std::string lot = "lot " + std::to_string(handed_out++ / lot_size);
      const double scale = with_bad_lot && lot == bad_lot ? 60 : 300;
      const int life = 1 + static_cast<int>(scale * std::sqrt(-std::log(uniform())));
      const int lost = uniform() < 0.15 ? 1 + static_cast<int>(200 * uniform()) : last_day;
      due[patient] = today + std::min(life, lost);
      clinic.units.push_back(unit("P" + std::to_string(patient), "L", today, due[patient],
                                  life <= lost ? EndReason::tear : EndReason::lost));
      clinic.units.back().lot = lot;
    }
  }
  return clinic;
}

struct Flags {
  bool bad_lot = false;
  int other_lots = 0;
  int items = 0;
};

Flags flags_in(const Clinic& clinic) {
  const Date today = day_zero + days{last_day};
  const auto found = find_surprises(clinic, fit_clinic(clinic, plain_priors(), today), today);
  REQUIRE(found.lots.size() > 20);
  Flags flags;
  for (const auto& lot : found.lots) {
    if (!lot.flagged) continue;
    if (lot.lot == bad_lot) {
      flags.bad_lot = true;
    } else {
      ++flags.other_lots;
    }
  }
  for (const auto& item : found.items) flags.items += item.flagged ? 1 : 0;
  return flags;
}

}  // namespace

TEST_CASE("Among ordinary clinics few have any lot flagged") {
  std::minstd_rand0 random{4711};
  int clinics_with_flag = 0;
  int items = 0;
  for (int i = 0; i < 200; ++i) {
    const Flags flags = flags_in(simulated(random, false));
    if (flags.bad_lot || flags.other_lots > 0) ++clinics_with_flag;
    items += flags.items;
  }
  MESSAGE(clinics_with_flag << " of 200 clinics with a false flag, " << items << " items");
  // With nothing to find, the false discovery rate is the chance of any flag: 5 % of 200 at most.
  CHECK(clinics_with_flag <= 10);
  CHECK(items <= 10);
}

TEST_CASE("A bad lot is found, and hardly any other is flagged with it") {
  std::minstd_rand0 random{815};
  int found = 0;
  int flagged_others = 0;
  for (int i = 0; i < 200; ++i) {
    const Flags flags = flags_in(simulated(random, true));
    found += flags.bad_lot ? 1 : 0;
    flagged_others += flags.other_lots;
  }
  MESSAGE("found in " << found << " of 200 clinics, with " << flagged_others << " other lots");
  CHECK(found >= 190);
  CHECK(flagged_others <= 20);  // a false discovery rate of 5 % allows about 10
}

}  // namespace surprises_recovery_test
