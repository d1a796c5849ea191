#include "desk/travel_form.hpp"

#include <charconv>

#include <fmt/format.h>

#include "desk/patient_card.hpp"
#include "desk/travel_words.hpp"

namespace sparewell::desk {
namespace {

template <class Number>
std::optional<Number> number_in(const std::string& text) {
  Number number{};
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, number);
  return error == std::errc{} && stopped == end ? std::optional{number} : std::nullopt;
}

/// Empty for an empty text; refuses what is no number of hours in a day.
Expected<std::optional<double>> hours_in(const char* field, const std::string& text) {
  if (text.empty()) return std::optional<double>{};
  const auto hours = number_in<double>(text);
  if (hours && *hours >= 0 && *hours <= 24) return hours;
  return refuse(fmt::format("{}: write hours a day from 0 to 24, or leave it empty.", field));
}

}  // namespace

std::string travel_introduction(const Day& day, const PatientRef& patient) {
  return fmt::format("For {}. {}", patient_words(day, patient), care_caution());
}

Expected<TravelRequest> read_travel(const std::string& patient, const TravelAnswers& answers) {
  TravelRequest made;
  made.patient = patient;
  const auto departure = parse_iso_date(answers.departure);
  if (!departure) return refuse("Departure: write the day as 2026-12-24.");
  const auto back = parse_iso_date(answers.back);
  if (!back) return refuse("Return: write the day as 2027-01-07.");
  made.departure = *departure;
  made.back = *back;
  if (!answers.delay.empty()) {
    const auto delay = number_in<int>(answers.delay);
    if (!delay || *delay < 0 || *delay > 365) {
      return refuse("Delay: write whole days from 0 to 365, or leave it empty.");
    }
    made.delay_days = *delay;
  }
  const auto percent = number_in<double>(answers.wanted.substr(0, answers.wanted.find(' ')));
  if (percent) made.wanted = *percent / 100;
  made.use.activity = parse_word<Activity>(answers.activity);
  made.use.sweating = parse_word<Sweating>(answers.sweating);
  if (answers.impact_sport != as_usual) made.use.impact_sport = answers.impact_sport == "yes";
  const auto kneeling = hours_in("Kneeling", answers.kneeling);
  if (!kneeling) return tl::unexpected{kneeling.error()};
  made.use.kneeling_hours = *kneeling;
  const auto wear = hours_in("Worn", answers.wear_hours);
  if (!wear) return tl::unexpected{wear.error()};
  made.use.wear_hours = *wear;
  return made;
}

std::string travel_text(const Day& day, const std::string& patient, const TravelAnswers& answers) {
  if (answers.departure.empty() || answers.back.empty()) {
    return "Fill in the days of departure and return.";
  }
  const auto request = read_travel(patient, answers);
  if (!request) return request.error().sentence;
  const auto check = check_travel(day.assessment(), *request);
  if (!check) return check.error().sentence;
  auto text = travel_verdict(*check) + "\n\n";
  for (const auto& gap : travel_gaps(*check)) text += gap + "\n";
  for (std::size_t i = 0; i < check->parts.size(); ++i) {
    text += travel_part_words(*check, i, day.today()) + "\n";
  }
  text += "\n";
  for (const auto& caution : travel_cautions()) text += caution + "\n";
  text.pop_back();
  return text;
}

}  // namespace sparewell::desk
