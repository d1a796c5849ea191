#include "desk/patient_card.hpp"

#include <algorithm>
#include <array>
#include <tuple>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/part_life.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_place.hpp"
#include "desk/trust_words.hpp"
#include "desk/usage_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

TableRow part_row(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  const auto* item = day.index().item(unit.item);
  const auto* forecast = day.forecast(position);
  const auto until = unit.ended_on.value_or(day.today());
  const auto age = days_between(unit.issued_on, until);
  const auto wear = forecast ? say("{:.0f} days", forecast->wear_age_days) : "";
  const auto known = [&](auto text) {
    return item ? std::string{text(*item)} : said("not in catalogue");
  };
  const auto worn_out = [&](std::optional<Date> Forecast::*date) {
    if (unit.ended_on) return Cell{"", std::nullopt};
    return date_cell(forecast ? forecast->*date : std::nullopt, no_forecast_words(day));
  };
  TableRow row;
  row.id = std::to_string(position);
  row.cells = {{shown_word(unit.side), std::nullopt},
               {capitalised(name_of_part(day, unit)), std::nullopt},
               {unit.item.text, std::nullopt},
               {known([](const Item& i) { return shown_word(i.material); }), std::nullopt},
               {known([](const Item& i) { return i.size_label; }), std::nullopt},
               {unit.lot, std::nullopt},
               {unit.serial, std::nullopt},
               date_cell(unit.issued_on, ""),
               {span_words(age), age},
               {wear, forecast ? std::optional{forecast->wear_age_days} : std::nullopt},
               {unit.ended_on ? ended_of_part(unit) : share_of_part(day, position), std::nullopt},
               worn_out(&Forecast::p10),
               worn_out(&Forecast::p50),
               worn_out(&Forecast::p90),
               worn_out(&Forecast::order_by)};
  return row;
}

/// Which part of the card a unit stands in: left, right, or no longer in use.
int section(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  if (!unit.in_use_on(day.today())) return 2;
  return unit.side == Side::left ? 0 : 1;
}

std::vector<std::size_t> in_card_order(const Day& day, const PatientRef& patient) {
  auto order = day.units_of(patient);
  const auto key = [&](std::size_t position) {
    const auto& unit = day.clinic().units[position];
    const auto* item = day.index().item(unit.item);
    const auto part = section(day, position);
    // Of the parts no longer in use, the latest is of most interest.
    const auto date =
        part == 2 ? -unit.issued_on.time_since_epoch() : unit.issued_on.time_since_epoch();
    const auto kind = part == 2 || !item ? Kind::liner : item->kind;
    return std::tuple{part, kind, date};
  };
  std::ranges::stable_sort(order, {}, key);
  return order;
}

void add_parts(PatientCard& card, const Day& day, const PatientRef& patient, bool with_ended) {
  static constexpr std::array headings{to_say("Left side"), to_say("Right side"),
                                       to_say("No longer in use")};
  int current = -1;
  for (const auto position : in_card_order(day, patient)) {
    const auto part = section(day, position);
    if (part == 2) ++card.ended;
    if (part == 2 && !with_ended) continue;
    if (part != current) {
      card.strips.emplace_back().heading = said(headings.at(static_cast<std::size_t>(part)));
      current = part;
    }
    card.parts.push_back(part_row(day, position));
    card.strips.push_back(strip_of_part(day, position));
  }
}

}  // namespace

std::string care_caution() {
  return said(
      "Sparewell supports and does not replace the judgement of licensed clinicians, makers' "
      "instructions and local rules.");
}

PatientCard patient_card(const Day& day, const PatientRef& patient, bool with_ended) {
  PatientCard card;
  const auto* record = day.index().patient(patient);
  if (!record) return card;
  card.title = patient_words(day, patient);
  card.reference = patient.text;
  card.visit = say("Next visit: {}.", date_words(record->next_visit, said("none booked")));
  if (record->birth_date) {
    card.visit = say("Born {}.", date_words(*record->birth_date)) + " " + card.visit;
  }
  if (const auto branch = branch_words(day.branches(), patient); !branch.empty()) {
    card.visit += " " + branch;
  }
  card.usage = usage_words(day.clinic(), patient, day.today());
  card.bookings = booking_sentences(day.clinic(), patient, day.today());
  card.prostheses = prosthesis_words(day.clinic(), patient);
  card.sensitivities = sensitivity_words(day.clinic(), patient);
  card.sensitive = std::ranges::any_of(day.clinic().sensitivities, [&](const Sensitivity& noted) {
    return noted.patient == patient;
  });
  add_parts(card, day, patient, with_ended);
  return card;
}

std::string trust_of_part(const Day& day, const std::string& id, const ForecastTestPtr& test) {
  if (id.empty()) return "";
  const std::size_t position = std::stoul(id);
  const auto* forecast = day.forecast(position);
  if (!forecast || !forecast->p10) return "";
  return trust_line(test, day.index().item(day.clinic().units.at(position).item)->kind);
}

std::vector<Column> part_columns() {
  return {
      {said("Side"), 6, Align::left, ""},
      {said("Part"), 18, Align::left, ""},
      {said("Item"), 14, Align::left, said("The clinic's item code")},
      {said("Material"), 14, Align::left, ""},
      {said("Size"), 7, Align::left, ""},
      {said("Lot"), 11, Align::left, ""},
      {said("Serial"), 11, Align::left, ""},
      {said("Issued"), 12, Align::left, ""},
      {said("Age"), 10, Align::right, said("By the calendar, from issue to today or to its end")},
      {said("Wear age"), 10, Align::right,
       said("In days of reference use: time worn, weighted by how hard it is used")},
      {said("Worn"), 16, Align::left,
       said("Part of the time that it is the one worn; how it ended")},
      {said("Worn out, early"), 14, Align::left,
       said("One part in ten like it is worn out by then")},
      {said("Worn out, middle"), 14, Align::left,
       said("Half of the parts like it are worn out by then")},
      {said("Worn out, late"), 14, Align::left,
       said("Nine parts in ten like it are worn out by then")},
      {said("Order by"), 12, Align::left,
       said("To have a replacement by the early date, as long as nine in ten orders of it take")}};
}

}  // namespace sparewell::desk
