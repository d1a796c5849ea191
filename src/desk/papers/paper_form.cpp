#include "desk/papers/paper_form.hpp"

#include "clinic/say.hpp"
#include "desk/papers/travel_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {

std::vector<std::string> language_choices() {
  std::vector<std::string> made;
  for (const auto& language : paper_languages()) made.push_back(language.name());
  if (made.size() > 1) made.push_back(list_words(made));
  return made;
}

PatientPaper read_paper(const PaperAnswers& answers) {
  PatientPaper made;
  const auto languages = paper_languages();
  for (std::size_t i = 0; i < languages.size(); ++i) {
    const bool all = static_cast<std::size_t>(answers.language) >= languages.size();
    if (all || static_cast<std::size_t>(answers.language) == i) {
      made.languages.push_back(languages[i].code());
    }
  }
  made.paper = answers.paper == 1 ? exchange::PaperSize::letter : exchange::PaperSize::a4;
  made.names = answers.name == 0;
  return made;
}

std::string translation_caution() {
  return said(
      "Translations have not been checked by a clinician whose language it is: let somebody who "
      "speaks it read the paper before it is handed over.");
}

namespace {

Expected<TravelCheck> checked(const Day& day, const std::string& patient,
                              const TravelAnswers& answers) {
  const auto request = read_travel(patient, answers);
  if (!request) return tl::unexpected{request.error()};
  return check_travel(day.assessment(), *request);
}

}  // namespace

std::string card_refusal(const Day& day, const std::string& patient, const TravelAnswers& answers) {
  const auto check = checked(day, patient, answers);
  return check ? "" : check.error().sentence;
}

Expected<int> write_travel_card(const Day& day, const std::string& patient,
                                const TravelAnswers& answers, const PatientPaper& how,
                                const std::string& path) {
  const auto check = checked(day, patient, answers);
  if (!check) return tl::unexpected{check.error()};
  return print_travel_card(day.clinic(), *check, how, day.today(), path);
}

std::string travel_card_file(const std::string& patient, const TravelAnswers& answers) {
  return say("travel card {} {}", patient, answers.departure);
}

Expected<Date> read_visit_day(const std::string& text) {
  const auto day = parse_iso_date(text);
  if (!day) return refuse(said("Day: write it as 2026-11-26."));
  return *day;
}

std::string visits_known(const Day& day, const std::string& text) {
  const auto on = read_visit_day(text);
  if (!on) return on.error().sentence;
  const auto known = std::ssize(patients_expected(day, *on));
  if (known == 0) return no_visit_words(day, *on);
  return say_n("{} visit is known for {}.", "{} visits are known for {}.",
               static_cast<unsigned long>(known), number_words(known), day_words(*on));
}

}  // namespace sparewell::desk
