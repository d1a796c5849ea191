/// Forecasts of simulated clinics held against when the units really wear out.
#pragma once

#include <array>
#include <cstdint>
#include <string>
#include <vector>

#include "simulated/law.hpp"
#include "simulated/simulate.hpp"
#include "wear/clinic_fit.hpp"
#include "wear/priors.hpp"

namespace sparewell::simulated {

enum class Peer { ours, oracle, sighted_oracle, calendar };
inline constexpr std::size_t peer_count = 4;

/// How one forecaster did with one unit.
struct UnitScore {
  double in_half = 0;      ///< 1 when worn out on a day from the 25 % to the 75 % date, else 0
  double in_80 = 0;        ///< the same of 10 % to 90 %
  double in_95 = 0;        ///< of 2.5 % to 97.5 %
  double smooth_half = 0;  ///< as in_half, the ends of the span not rounded to whole days: the part
                           ///< of the last day's chance that lies within 25 to 75 %
  double smooth_80 = 0;
  double width_80 = 0;  ///< days from the 10 % to the 90 % date
  double pinball = 0;   ///< days, mean over the levels .1 .25 .5 .75 .9 of the remaining life
};

struct ScoredUnit {
  std::uint64_t clinic = 0;   ///< the seed
  std::uint64_t patient = 0;  ///< alike for units of one patient, over all clinics
  Kind kind = Kind::liner;
  std::array<UnitScore, peer_count> by;  ///< of the calendar rule only the pinball loss

  [[nodiscard]] const UnitScore& of(Peer peer) const { return by[static_cast<std::size_t>(peer)]; }
};

/// Fits the clinic with `priors` and scores every unit in use. What was fitted goes to `fitted`
/// when that is given.
[[nodiscard]] std::vector<ScoredUnit> score(const SimulatedClinic& made, const ClinicLaw& law,
                                            const wear::PriorTable& priors, std::uint64_t seed,
                                            wear::ClinicLife* fitted = nullptr);

/// A mean or ratio with its standard error, units of one patient (or clinic) being alike.
struct Measured {
  double value = 0;
  double error = 0;
};

enum class Cluster { patient, clinic };

/// Mean of one score over the units.
[[nodiscard]] Measured mean_of(const std::vector<ScoredUnit>& units, Peer peer,
                               double UnitScore::*score, Cluster cluster = Cluster::patient);

/// Mean pinball loss of one forecaster over that of another.
[[nodiscard]] Measured pinball_ratio(const std::vector<ScoredUnit>& units, Peer ours, Peer theirs,
                                     Cluster cluster = Cluster::patient);

}  // namespace sparewell::simulated
