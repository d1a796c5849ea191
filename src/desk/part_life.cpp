#include "desk/part_life.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string order_words(const std::optional<Date>& by, Date today) {
  if (!by) return "";
  if (*by < today) return say(" The order-by date, {}, has passed.", date_words(*by));
  return say(" Order a replacement by {}.", date_words(*by));
}

/// What else may end it, where that is not negligible.
std::string otherwise_words(double chance) {
  if (chance < 0.01) return "";
  return say(" It may also be lost, outgrown or exchanged: {} within a year.",
             chance_words(chance));
}

/// The use-by date where it matters soon, or for a part that nothing else ends.
std::string use_by_words(const std::optional<wear::UseBy>& use_by, bool worn, Date today) {
  if (!use_by) return "";
  const auto words = date_words(use_by->day);
  if (use_by->day < today) {
    return use_by->at_latest ? say(" Its use-by date, {} at the latest, has passed.", words)
                             : say(" Its use-by date, {}, has passed.", words);
  }
  if (worn && days_between(today, use_by->day) > 365) return "";
  return use_by->at_latest ? say(" Use by {} at the latest.", words) : say(" Use by {}.", words);
}

std::string life_words(const Day& day, std::size_t position, const std::string& part) {
  const auto& unit = day.clinic().units[position];
  auto text = say("{}, {}, issued {}. ", capitalised(part), shown_word(unit.side),
                  date_words(unit.issued_on));
  if (unit.ended_on) return text + capitalised(ended_of_part(unit)) + ".";
  const auto* forecast = day.forecast(position);
  if (!forecast && !day.worked_out()) return text + said("Its life is being worked out.");
  if (!forecast) return text + said("No forecast: the catalogue does not know the item.");
  const auto use_by = use_by_words(forecast->use_by, forecast->p10.has_value(), day.today());
  const auto otherwise = otherwise_words(forecast->otherwise_in_a_year);
  if (!forecast->p10) {
    return text + said("It is not being worn, so it does not wear out.") + use_by + otherwise;
  }
  text += say("Even chance of being worn out by {}; between {} and {} for eight in ten.",
              date_words(forecast->p50, said("a date too far ahead to say")),
              date_words(*forecast->p10), date_words(forecast->p90, said("no date in sight")));
  return text + order_words(forecast->order_by, day.today()) + use_by + otherwise;
}

}  // namespace

std::string ended_of_part(const Unit& unit) {
  const auto reason = unit.end_reason ? shown_word(*unit.end_reason) : said("no reason recorded");
  return say("ended {}, {}", date_words(*unit.ended_on), reason);
}

std::string name_of_part(const Day& day, const Unit& unit) {
  const auto* item = day.index().item(unit.item);
  return item ? kind_words(*item) : unit.item.text;
}

std::string life_of_part(const Day& day, std::size_t unit) {
  return life_words(day, unit, name_of_part(day, day.clinic().units[unit]));
}

std::string share_of_part(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  if (unit.share) {
    if (*unit.share <= 0) return said("in the drawer");
    return *unit.share >= 1 ? said("always") : fmt::format("{:.0f} %", *unit.share * 100);
  }
  const auto* item = day.index().item(unit.item);
  const double share = item ? day.alternation().share_on(unit, item->kind, day.today()) : 1;
  return share >= 1 ? said("always") : say("1 of {:.0f} in turn", 1 / share);
}

StripEntry strip_of_part(const Day& day, std::size_t position) {
  const auto& unit = day.clinic().units[position];
  const auto* item = day.index().item(unit.item);
  StripEntry strip;
  strip.id = std::to_string(position);
  const auto name = name_of_part(day, unit);
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

}  // namespace sparewell::desk
