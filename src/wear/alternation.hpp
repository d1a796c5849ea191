/// How units that a patient has in use together divide the time.
#pragma once

#include <array>
#include <unordered_map>
#include <vector>

#include "clinic/clinic.hpp"

namespace sparewell::wear {

/// Share of the time from a date on, until the next span.
struct ShareSpan {
  Date from;
  double share = 1;
};

/// A share that is recorded holds for the whole life. Liners, sleeves and socks without one
/// alternate with the others without one that the patient has in use on the same side: each takes
/// 1/n of the time, n as units come and go. Units of other kinds are worn all the time.
class Alternation {
 public:
  /// Counts as known at the end of `today`: units issued later are not there yet, units ended later
  /// are still in use.
  Alternation(const Clinic& clinic, const ClinicIndex& index, Date today);

  /// Shares of `unit`, which is of `kind`, from its issue to `end`; the first span starts on the
  /// issue or before, in order of date.
  [[nodiscard]] std::vector<ShareSpan> shares(const Unit& unit, Kind kind, Date end) const;
  [[nodiscard]] double share_on(const Unit& unit, Kind kind, Date day) const;

 private:
  struct Step {
    Date from;
    int in_use = 0;
  };
  using Steps = std::vector<Step>;
  static constexpr std::size_t alternating_kinds = 3;
  static constexpr std::size_t sides = 2;

  [[nodiscard]] const Steps* steps(const Unit& unit, Kind kind) const;
  [[nodiscard]] static std::size_t slot(Side side, Kind kind);

  std::unordered_map<PatientRef, std::array<Steps, alternating_kinds * sides>> steps_;
};

}  // namespace sparewell::wear
