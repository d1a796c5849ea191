#include "desk/travel_form.hpp"

#include <algorithm>
#include <charconv>
#include <variant>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desk/travel_lend.hpp"
#include "desk/travel_team.hpp"
#include "desk/travel_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

template <class Number>
std::optional<Number> number_in(const std::string& text) {
  Number number{};
  const auto* end = text.data() + text.size();
  const auto [stopped, error] = std::from_chars(text.data(), end, number);
  return error == std::errc{} && stopped == end ? std::optional{number} : std::nullopt;
}

/// Nothing for an empty text; refuses what is no whole number of days in a year.
Expected<std::optional<int>> days_in(const char* field, const std::string& text, int least) {
  if (text.empty()) return std::optional<int>{};
  const auto days = number_in<int>(text);
  if (days && *days >= least && *days <= 365) return days;
  return refuse(say("{}: write whole days from {} to 365, or leave it empty.", field, least));
}

/// Empty for an empty text; refuses what is no number of hours in a day. A decimal comma is read as
/// well.
Expected<std::optional<double>> hours_in(const char* field, const std::string& text) {
  if (text.empty()) return std::optional<double>{};
  auto number = text;
  std::ranges::replace(number, ',', '.');
  const auto hours = number_in<double>(number);
  if (hours && *hours >= 0 && *hours <= 24) return hours;
  return refuse(say("{}: write hours a day from 0 to 24, or leave it empty.", field));
}

}  // namespace

std::string travel_introduction(const Day& day, const PatientRef& patient) {
  return say("For {}. {}", patient_words(day, patient), care_caution());
}

Expected<TravelRequest> read_travel(const std::string& patient, const TravelAnswers& answers) {
  TravelRequest made;
  made.patient = patient;
  const auto departure = parse_iso_date(answers.departure);
  if (!departure) return refuse(say("Departure: write the day as 2026-12-24."));
  const auto back = parse_iso_date(answers.back);
  if (!back) return refuse(say("Return: write the day as 2027-01-07."));
  made.departure = *departure;
  made.back = *back;
  const auto delay = days_in(said("Delay"), answers.delay, 0);
  if (!delay) return tl::unexpected{delay.error()};
  made.delay_days = delay->value_or(0);
  const auto resupply = days_in(said("Parts there"), answers.resupply, 1);
  if (!resupply) return tl::unexpected{resupply.error()};
  made.resupply_days = *resupply;
  made.use.water = answers.sweating == in_water;
  const auto percent = number_in<double>(answers.wanted.substr(0, answers.wanted.find(' ')));
  if (percent) made.wanted = *percent / 100;
  made.use.activity = parse_word<Activity>(answers.activity);
  made.use.sweating = parse_word<Sweating>(answers.sweating);
  if (answers.impact_sport != as_usual) made.use.impact_sport = answers.impact_sport == "yes";
  const auto kneeling = hours_in(said("Kneeling"), answers.kneeling);
  if (!kneeling) return tl::unexpected{kneeling.error()};
  made.use.kneeling_hours = *kneeling;
  const auto wear = hours_in(said("Worn"), answers.wear_hours);
  if (!wear) return tl::unexpected{wear.error()};
  made.use.wear_hours = *wear;
  return made;
}

namespace {

/// The patient and those who travel along, each as typed.
std::vector<std::string> travellers(const std::string& patient, const std::string& with) {
  auto made = parts_of_list(with, ",");
  made.insert(made.begin(), patient);
  return made;
}

/// One patient alone, or several.
using Checked = std::variant<TravelCheck, TeamCheck>;

Expected<Checked> checked(const Day& day, const std::string& patient,
                          const TravelAnswers& answers) {
  if (answers.departure.empty() || answers.back.empty()) {
    return refuse(say("Fill in the days of departure and return."));
  }
  const auto request = read_travel(patient, answers);
  if (!request) return tl::unexpected{request.error()};
  const auto patients = travellers(patient, answers.with);
  if (patients.size() > 1) {
    auto team = check_team(day.assessment(), *request, patients);
    if (!team) return tl::unexpected{team.error()};
    return Checked{std::move(*team)};
  }
  auto check = check_travel(day.assessment(), *request);
  if (!check) return tl::unexpected{check.error()};
  return Checked{std::move(*check)};
}

std::string first_stop(const TravelCheck& check) {
  for (const TravelPart& part : check.parts) {
    if (!part.stops.empty()) return part.stops.front().words;
  }
  return {};
}

std::string first_stop(const TeamCheck& team) {
  for (const TravelCheck& member : team.members) {
    if (auto words = first_stop(member); !words.empty()) return words;
  }
  return {};
}

std::string text_of(const TravelCheck& check, Date today) {
  auto text = travel_verdict(check) + "\n\n";
  for (const auto& gap : travel_gaps(check)) text += gap + "\n";
  for (std::size_t i = 0; i < check.parts.size(); ++i) {
    text += travel_part_words(check, i, today) + "\n";
  }
  text += "\n";
  for (const auto& caution : water_cautions(check)) text += caution + "\n";
  for (const auto& caution : travel_cautions(check.request)) text += caution + "\n";
  text.pop_back();
  return text;
}

std::string text_of(const TeamCheck& team, Date today) {
  auto text = team_text(team, today) + "\n";
  for (const auto& member : team.members) {
    for (const auto& caution : water_cautions(member)) {
      text += fmt::format("{}: {}\n", member.request.patient, caution);
    }
  }
  for (const auto& caution : travel_cautions(team.members.front().request)) {
    text += fmt::format("{}\n", caution);
  }
  text.pop_back();
  return text;
}

}  // namespace

Expected<std::string> lending_question(const Day& day, const std::string& patient,
                                       const TravelAnswers& answers) {
  const auto check = checked(day, patient, answers);
  if (!check) return tl::unexpected{check.error()};
  const auto stop = std::visit([](const auto& each) { return first_stop(each); }, *check);
  if (!stop.empty()) {
    return refuse(
        say("{} Nothing is lent. Where a clinician decides otherwise, lend it by itself.", stop));
  }
  const auto words = std::visit([](const auto& each) { return lending_words(each); }, *check);
  if (words.empty()) return refuse(say("No spare that is to be packed lies on the shelf."));
  return std::holds_alternative<TeamCheck>(*check) ? say("Lend {}?", words)
                                                   : say("Lend {} {}?", patient, words);
}

Expected<Booked> lend_for_trip(const ClinicFile& file, const Day& day, const std::string& patient,
                               const TravelAnswers& answers) {
  const auto check = checked(day, patient, answers);
  if (!check) return tl::unexpected{check.error()};
  return in_one_work(*open_store(file), {file.who, to_say("spares were lent for a trip")},
                     [&](store::UnitOfWork& work) {
                       return std::visit(
                           [&](const auto& each) { return lend_spares(work, each, file.today); },
                           *check);
                     });
}

std::string travel_text(const Day& day, const std::string& patient, const TravelAnswers& answers) {
  const auto check = checked(day, patient, answers);
  if (!check) return check.error().sentence;
  return std::visit([&](const auto& each) { return text_of(each, day.today()); }, *check);
}

}  // namespace sparewell::desk
