/// What the window asks before papers are written, and writing them.
#pragma once

#include <string>
#include <vector>

#include "desk/papers/paper_parts.hpp"
#include "desk/travel_form.hpp"
#include "desk/visit_papers.hpp"

namespace sparewell::desk {

/// "English", "Español", and all of them at last.
[[nodiscard]] std::vector<std::string> language_choices();
/// What is chosen, by position: a language, A4 or Letter, with or without the name.
struct PaperAnswers {
  int language = 0;
  int paper = 0;
  int name = 0;
};
[[nodiscard]] PatientPaper read_paper(const PaperAnswers& answers);
/// That somebody should read a translation before it is handed over.
[[nodiscard]] std::string translation_caution();

/// Why no card can be written of what is filled in; "" when one can.
[[nodiscard]] std::string card_refusal(const Day& day, const std::string& patient,
                                       const TravelAnswers& answers);
/// Checks the trip and writes its card; refuses what is filled in wrongly, naming the field.
[[nodiscard]] Expected<int> write_travel_card(const Day& day, const std::string& patient,
                                              const TravelAnswers& answers, const PatientPaper& how,
                                              const std::string& path);
/// "travel card P-0012 2026-12-24": a name for its file, without the patient's.
[[nodiscard]] std::string travel_card_file(const std::string& patient,
                                           const TravelAnswers& answers);

/// Refuses what is no day.
[[nodiscard]] Expected<Date> read_visit_day(const std::string& text);
/// How many visits are known for the day that is typed, or what is wrong with it.
[[nodiscard]] std::string visits_known(const Day& day, const std::string& text);

}  // namespace sparewell::desk
