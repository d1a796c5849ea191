#include "desk/patient_card.hpp"

#include <algorithm>
#include <tuple>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/booking_rows.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_place.hpp"
#include "desk/trust_words.hpp"
#include "desk/usage_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string share_words(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  if (unit.share) {
    if (*unit.share <= 0) return "in the drawer";
    return *unit.share >= 1 ? "always" : fmt::format("{:.0f} %", *unit.share * 100);
  }
  const auto* item = day.index().item(unit.item);
  const double share = item ? day.alternation().share_on(unit, item->kind, day.today()) : 1;
  return share >= 1 ? "always" : fmt::format("1 of {:.0f} in turn", 1 / share);
}

std::string ended_words(const Unit& unit) {
  const auto reason = unit.end_reason ? std::string{word(*unit.end_reason)} : "no reason recorded";
  return "ended " + date_words(*unit.ended_on) + ", " + reason;
}

std::string order_words(const std::optional<Date>& by, Date today) {
  if (!by) return "";
  if (*by < today) return " The order-by date, " + date_words(*by) + ", has passed.";
  return " Order a replacement by " + date_words(*by) + ".";
}

/// What else may end it, where that is not negligible.
std::string otherwise_words(double chance) {
  if (chance < 0.01) return "";
  return fmt::format(" It may also be lost, outgrown or exchanged: {} within a year.",
                     chance_words(chance));
}

/// The use-by date where it matters soon, or for a part that nothing else ends.
std::string use_by_words(const std::optional<wear::UseBy>& use_by, bool worn, Date today) {
  if (!use_by) return "";
  const auto* latest = use_by->at_latest ? " at the latest" : "";
  if (use_by->day < today) {
    return fmt::format(" Its use-by date, {}{}, has passed.", date_words(use_by->day), latest);
  }
  if (worn && days_between(today, use_by->day) > 365) return "";
  return fmt::format(" Use by {}{}.", date_words(use_by->day), latest);
}

std::string life_words(const Day& day, std::size_t position, const std::string& part) {
  const auto& unit = day.clinic().units[position];
  auto text = capitalised(part) + ", " + std::string{word(unit.side)} + ", issued " +
              date_words(unit.issued_on) + ". ";
  if (unit.ended_on) return text + capitalised(ended_words(unit)) + ".";
  const auto* forecast = day.forecast(position);
  if (!forecast && !day.worked_out()) return text + said("Its life is being worked out.");
  if (!forecast) return text + "No forecast: the catalogue does not know the item.";
  const auto use_by = use_by_words(forecast->use_by, forecast->p10.has_value(), day.today());
  const auto otherwise = otherwise_words(forecast->otherwise_in_a_year);
  if (!forecast->p10) {
    return text + "It is not being worn, so it does not wear out." + use_by + otherwise;
  }
  text += fmt::format("Even chance of being worn out by {}; between {} and {} for eight in ten.",
                      date_words(forecast->p50, "a date too far ahead to say"),
                      date_words(*forecast->p10), date_words(forecast->p90, "no date in sight"));
  return text + order_words(forecast->order_by, day.today()) + use_by + otherwise;
}

std::string part_name(const Day& day, const Unit& unit) {
  const auto* item = day.index().item(unit.item);
  return item ? kind_words(*item) : unit.item.text;
}

TableRow part_row(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  const auto* item = day.index().item(unit.item);
  const auto* forecast = day.forecast(position);
  const auto until = unit.ended_on.value_or(day.today());
  const auto age = days_between(unit.issued_on, until);
  const auto wear = forecast ? fmt::format("{:.0f} days", forecast->wear_age_days) : "";
  const auto known = [&](auto text) {
    return item ? std::string{text(*item)} : "not in catalogue";
  };
  const auto worn_out = [&](std::optional<Date> Forecast::*date) {
    if (unit.ended_on) return Cell{"", std::nullopt};
    return date_cell(forecast ? forecast->*date : std::nullopt, no_forecast_words(day));
  };
  TableRow row;
  row.id = std::to_string(position);
  row.cells = {{std::string{word(unit.side)}, std::nullopt},
               {capitalised(part_name(day, unit)), std::nullopt},
               {unit.item.text, std::nullopt},
               {known([](const Item& i) { return word(i.material); }), std::nullopt},
               {known([](const Item& i) { return i.size_label; }), std::nullopt},
               {unit.lot, std::nullopt},
               {unit.serial, std::nullopt},
               date_cell(unit.issued_on, ""),
               {span_words(age), age},
               {wear, forecast ? std::optional{forecast->wear_age_days} : std::nullopt},
               {unit.ended_on ? ended_words(unit) : share_words(day, position), std::nullopt},
               worn_out(&Forecast::p10),
               worn_out(&Forecast::p50),
               worn_out(&Forecast::p90),
               worn_out(&Forecast::order_by)};
  return row;
}

StripEntry strip_of(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  const auto* item = day.index().item(unit.item);
  StripEntry strip;
  strip.id = std::to_string(position);
  const auto name = part_name(day, unit);
  const auto size = item && !item->size_label.empty() ? " " + item->size_label : std::string{};
  strip.label = capitalised(name) + size;
  if (!unit.serial.empty()) {
    strip.label += "  " + unit.serial;
  } else if (!unit.lot.empty()) {
    strip.label += "  " + unit.lot;
  }
  strip.words = life_words(day, position, name);
  strip.issued = unit.issued_on;
  strip.ended = unit.ended_on;
  if (const auto* forecast = day.forecast(position); forecast && !unit.ended_on) {
    strip.p10 = forecast->p10;
    strip.p50 = forecast->p50;
    strip.p90 = forecast->p90;
    strip.order_by = forecast->order_by;
  }
  return strip;
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
  static const std::string headings[] = {"Left side", "Right side", "No longer in use"};
  int current = -1;
  for (const auto position : in_card_order(day, patient)) {
    const auto part = section(day, position);
    if (part == 2) ++card.ended;
    if (part == 2 && !with_ended) continue;
    if (part != current) {
      card.strips.emplace_back().heading = headings[part];
      current = part;
    }
    card.parts.push_back(part_row(day, position));
    card.strips.push_back(strip_of(day, position));
  }
}

}  // namespace

const std::string& care_caution() {
  static const std::string text =
      "Sparewell supports and does not replace the judgement of licensed clinicians, makers' "
      "instructions and local rules.";
  return text;
}

std::string life_of_part(const Day& day, std::size_t unit) {
  return life_words(day, unit, part_name(day, day.clinic().units[unit]));
}

PatientCard patient_card(const Day& day, const PatientRef& patient, bool with_ended) {
  PatientCard card;
  const auto* record = day.index().patient(patient);
  if (!record) return card;
  card.title = patient_words(day, patient);
  card.reference = patient.text;
  card.visit = "Next visit: " + date_words(record->next_visit, "none booked") + ".";
  if (record->birth_date)
    card.visit = "Born " + date_words(*record->birth_date) + ". " + card.visit;
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
  return {{"Side", 6, Align::left, ""},
          {"Part", 18, Align::left, ""},
          {"Item", 14, Align::left, "The clinic's item code"},
          {"Material", 14, Align::left, ""},
          {"Size", 7, Align::left, ""},
          {"Lot", 11, Align::left, ""},
          {"Serial", 11, Align::left, ""},
          {"Issued", 12, Align::left, ""},
          {"Age", 10, Align::right, "By the calendar, from issue to today or to its end"},
          {"Wear age", 10, Align::right,
           "In days of reference use: time worn, weighted by how hard it is used"},
          {"Worn", 16, Align::left, "Part of the time that it is the one worn; how it ended"},
          {"Worn out, early", 14, Align::left, "One part in ten like it is worn out by then"},
          {"Worn out, middle", 14, Align::left, "Half of the parts like it are worn out by then"},
          {"Worn out, late", 14, Align::left, "Nine parts in ten like it are worn out by then"},
          {"Order by", 12, Align::left,
           "To have a replacement by the early date, as long as nine in ten orders of it take"}};
}

}  // namespace sparewell::desk
