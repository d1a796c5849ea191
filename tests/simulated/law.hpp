/// What is true of an invented clinic: the law by which its parts wear, and what of it gets on
/// record.
#pragma once

#include <map>
#include <string>
#include <vector>

#include "clinic/words.hpp"
#include "wear/factors.hpp"

namespace sparewell::simulated {

/// Lives of one kind: X ~ Weibull(shape, scale of the material times the item's effect), the hazard
/// multiplied by the person's Z ~ Gamma with mean 1 and variance theta.
struct KindLaw {
  Kind kind = Kind::liner;
  double shape = 2;
  std::map<Material, double> scale_days;  ///< days of reference use
  wear::FactorVector beta{};              ///< log wear rate for one more of each factor
  double theta = 0.2;                     ///< 0: patients do not differ
  int items_per_material = 2;
  double item_spread = 0;  ///< standard deviation over items of the log of the item's effect
  double alternation = 0;  ///< chance that a patient has two at a time on a side
  double worn_by = 1;      ///< chance that a patient uses the kind at all
};

/// Endings other than by wear, each at a constant rate a year of calendar time, whatever the wear.
struct OtherEndings {
  double lost = 0.04;
  double resized = 0.04;
  double reaction = 0.01;
  double upgrade = 0.02;
};

/// How patients use their parts and what the clinic writes down of it.
struct UsageLaw {
  double changes_a_year = 0.15;     ///< rate at which a patient's usage is drawn anew
  double announced = 0;             ///< chance that a change after today is known, and comes true
  bool changes_are_strong = false;  ///< the work changes between none and much kneeling each time
  bool sport_recorded = true;
  double kneeling_error_hours = 0;  ///< standard deviation of the error of recorded kneeling hours
};

struct ClinicLaw {
  std::string name;
  std::vector<KindLaw> kinds;
  OtherEndings endings;
  UsageLaw usage;
  double years = 4;         ///< of records before today; patients start at any time within them
  double years_before = 0;  ///< of supply before the records begin: units ended by then are absent
  double bilateral = 0.1;   ///< chance that a patient wears parts on both sides
  double late_replacement = 0.2;  ///< chance that a replacement comes one to five days late
};

}  // namespace sparewell::simulated
