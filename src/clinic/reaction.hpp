/// A skin reaction of a patient, as the clinic wrote it down.
#pragma once

#include <array>
#include <optional>
#include <string>
#include <string_view>
#include <vector>

#include "clinic/date.hpp"
#include "clinic/refs.hpp"
#include "clinic/words.hpp"

namespace sparewell {

struct Reaction {
  PatientRef patient;
  std::optional<Side> side;  ///< empty: not of one side, or not recorded
  Date began_on;
  std::optional<Date> ended_on;    ///< the last day; empty while it lasts, or when not recorded
  std::vector<std::string> signs;  ///< what was seen or felt, see usual_signs; others in any words
  std::string note;

  friend bool operator==(const Reaction&, const Reaction&) = default;
};

/// Signs that are asked for by name.
inline constexpr std::array<std::string_view, 5> usual_signs{
    to_say("itching"), to_say("redness"), to_say("blisters"), to_say("swelling"), to_say("rash")};

}  // namespace sparewell
