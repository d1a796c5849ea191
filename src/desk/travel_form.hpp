/// What the window asks and says before a patient's trip.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "desk/day.hpp"
#include "desk/travel.hpp"

namespace sparewell::desk {

/// The first choice of every list: the use that is recorded.
inline constexpr const char* as_usual = "as usual";
/// Wanted chances that the window offers, the usual one first.
inline constexpr std::array wanted_choices{"95 %", "90 %", "99 %", "99.9 %"};

/// What is typed or chosen; empty texts and as_usual leave the recorded use.
struct TravelAnswers {
  std::string departure;
  std::string back;
  std::string delay;  ///< days, or empty for none
  std::string wanted;
  std::string activity;
  std::string kneeling;
  std::string wear_hours;
  std::string sweating;
  std::string impact_sport;
};

/// What stands above the form.
[[nodiscard]] std::string travel_introduction(const Day& day, const PatientRef& patient);

/// Refuses days and numbers that cannot be read, naming the field.
[[nodiscard]] Expected<TravelRequest> read_travel(const std::string& patient,
                                                  const TravelAnswers& answers);

/// All that the check says, or why there is none; what to fill in while a day is missing.
[[nodiscard]] std::string travel_text(const Day& day, const std::string& patient,
                                      const TravelAnswers& answers);

}  // namespace sparewell::desk
