/// The log of a patient's skin reactions beside what was worn.
#pragma once

#include <optional>
#include <string>
#include <vector>

#include "care/reaction_onsets.hpp"
#include "clinic/clinic.hpp"

namespace sparewell::desk {

/// "itching and redness, left, from 3 May 2026 until 12 May 2026"; what it is not of one side says
/// so.
[[nodiscard]] std::string reaction_words(const Reaction& reaction);

/// A part that lay against the skin on the day on which a reaction began.
struct WornThen {
  Side side = Side::left;
  ItemCode item;
  std::string kind;  ///< "neoprene sleeve"; "" for an item that the catalogue does not have
  Date since;
  std::optional<Date> ended_on;
  bool ended_for_it = false;  ///< because of a reaction
};

/// "SN03-M, a neoprene sleeve, since 3 Feb 2024 (340 days)": as seen on that day.
[[nodiscard]] std::string worn_words(const WornThen& worn, Date day);

struct LogEntry {
  std::optional<Reaction> recorded;  ///< empty: only that parts were ended because of a reaction
  Date day;
  std::optional<Side> side;
  std::vector<WornThen> worn;  ///< parts that usually touch the skin and are not in a drawer
};

/// All reactions of the patient, the latest first; the day on which parts were ended because of a
/// reaction stands for itself where none is recorded shortly before.
[[nodiscard]] std::vector<LogEntry> reaction_log(const Clinic& clinic, const PatientRef& patient,
                                                 Date today);

/// One sentence: what was seen, and when.
[[nodiscard]] std::string entry_words(const LogEntry& entry);

/// A row of the chart: one item on one side, with the days on which it was worn.
struct WornStrip {
  std::string heading;  ///< not empty: only this text is drawn
  std::string label;
  std::string words;  ///< the same in a sentence
  care::DaySpans worn;
};

/// What is drawn: strips by side in the order of first wear, and the days of reactions.
struct WornChart {
  std::vector<WornStrip> strips;
  std::vector<LogEntry> reactions;
  Date from;
  Date today;
};

[[nodiscard]] WornChart worn_chart(const Clinic& clinic, const PatientRef& patient, Date today);

}  // namespace sparewell::desk
