/// What the window asks and says before a patient's trip.
#pragma once

#include <array>
#include <string>
#include <vector>

#include "clinic/say.hpp"
#include "desk/clinic_jobs.hpp"
#include "desk/day.hpp"
#include "desk/stock_booking.hpp"
#include "desk/travel.hpp"

namespace sparewell::desk {

/// The first choice of every list: the use that is recorded.
inline constexpr const char* as_usual = to_say("as usual");
/// Wanted chances that the window offers, the usual one first.
inline constexpr std::array wanted_choices{"95 %", "90 %", "99 %", to_say("99.9 %")};

/// A choice beside those of sweating: swimming or showering with the prosthesis.
inline constexpr const char* in_water = to_say("in water");

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
  std::string resupply = {};  ///< days until a failed part can be had at the place; empty: never
  std::string with = {};      ///< references of others who travel along, with commas between them
};

/// What stands above the form.
[[nodiscard]] std::string travel_introduction(const Day& day, const PatientRef& patient);

/// Refuses days and numbers that cannot be read, naming the field.
[[nodiscard]] Expected<TravelRequest> read_travel(const std::string& patient,
                                                  const TravelAnswers& answers);

/// All that the check says, or why there is none; what to fill in while a day is missing.
[[nodiscard]] std::string travel_text(const Day& day, const std::string& patient,
                                      const TravelAnswers& answers);

/// What lending the spares would lend, as a question; refuses where nothing can be checked, a check
/// stops a spare, or none lies on the shelf.
[[nodiscard]] Expected<std::string> lending_question(const Day& day, const std::string& patient,
                                                     const TravelAnswers& answers);

/// Lends them, in a unit of work of its own. Throws store::StoreFailure.
[[nodiscard]] Expected<Booked> lend_for_trip(const ClinicFile& file, const Day& day,
                                             const std::string& patient,
                                             const TravelAnswers& answers);

}  // namespace sparewell::desk
