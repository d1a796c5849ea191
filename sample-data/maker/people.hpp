/// Who comes to the invented clinic: limbs, habits and their changes, all drawn before the days
/// run.
#pragma once

#include <array>
#include <optional>
#include <vector>

#include "catalogue.hpp"
#include "clinic/patient.hpp"
#include "random.hpp"

namespace sparewell::sample {

/// What the maker is asked for.
struct Wishes {
  std::uint64_t seed = 1;
  int patients = 150;
  double years = 4;
  int socks = 6;  ///< handed out at a time
  Date until = make_date(2026, 11, 24);

  [[nodiscard]] Date from() const { return until - days{static_cast<int>(years * 365.25)}; }
};

/// A residual limb that shrinks after the amputation and hardly changes later.
struct Limb {
  Side side = Side::left;
  Level level = Level::transtibial;
  Suspension first = Suspension::pin;  ///< of the preparatory prosthesis, or of the only one
  Suspension later = Suspension::pin;  ///< of the definitive prosthesis
  std::optional<Date> definitive_on;   ///< empty: the first prosthesis is the definitive one
  double circumference_cm = 25;        ///< when fitted, 4 cm above the distal end
  double shrinking = 0;                ///< 0 for a mature limb
  double drift_a_year = 0;             ///< slow change, as a part of the circumference
  Material liner_material = Material::silicone;
  bool alternates_liners = false;
  bool records_shares = true;
  bool keeps_spare_sleeve = false;

  /// `weeks` after the first fitting, without measuring error.
  [[nodiscard]] double true_circumference(double weeks) const;
};

struct Person {
  Patient record;
  Date joined;  ///< first fitting at this clinic
  std::vector<Limb> limbs;
  std::optional<Date> leaves;
  EndReason leave_reason = EndReason::returned;
  std::vector<Usage> usage;                   ///< in order of date; the first on `joined`
  std::array<double, 7> hazard_multiplier{};  ///< Z of each Kind
  bool reacts_to_gel = false;
  bool brings_old_hardware = false;  ///< wears a lock or pump issued before the records begin
};

/// The person's own numbers come from a stream of their own.
[[nodiscard]] Person make_person(const Wishes& wishes, int number);

/// Models of the chain that a suspension needs, in the order liner, sleeve, lock, pin, valve, pump,
/// socks; what it does not need is left out.
[[nodiscard]] std::vector<ModelId> chain_of(Level level, Suspension suspension,
                                            Material liner_material, Random& random);

}  // namespace sparewell::sample
