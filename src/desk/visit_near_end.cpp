#include "desk/visit_near_end.hpp"

#include <algorithm>

#include "clinic/say.hpp"
#include "desk/papers/paper_parts.hpp"
#include "desk/part_words.hpp"
#include "desk/patient_card.hpp"

namespace sparewell::desk {
namespace {

bool near_end(const Forecast& forecast, Date visit, Date today) {
  const Date horizon = visit + near_end_days;
  return (forecast.p10 && *forecast.p10 <= horizon) ||
         (forecast.order_by && *forecast.order_by < today) ||
         (forecast.use_by && forecast.use_by->day <= horizon);
}

/// The day that sorts parts by what comes first.
Date first_day(const Forecast& forecast) {
  const Date late = Date::max();
  return std::min(forecast.p10.value_or(late), forecast.use_by ? forecast.use_by->day : late);
}

std::string near_end_words(const Day& day, const PartsAlike& part) {
  const auto first = part.units.front();
  auto words = life_of_part(day, first);
  if (part.units.size() > 1) {
    words = say("{} pieces alike, the first to end: {}", part.units.size(), words);
  }
  return say("{} Item {}, {}.", words, part.item.text, lot_words(day.clinic().units[first]));
}

}  // namespace

std::vector<NearEnd> parts_near_end(const Day& day, const PatientRef& patient, Date visit) {
  const auto first = [&](std::size_t unit) { return first_day(*day.forecast(unit)); };
  std::vector<NearEnd> made;
  for (auto& part : parts_in_use(day.clinic(), day.index(), patient, visit)) {
    std::erase_if(part.units, [&](std::size_t unit) {
      const auto* forecast = day.forecast(unit);
      return forecast == nullptr || !near_end(*forecast, visit, day.today());
    });
    if (part.units.empty()) continue;
    std::ranges::stable_sort(part.units, {}, first);
    auto words = near_end_words(day, part);
    made.push_back({std::move(part.units), std::move(words)});
  }
  std::ranges::stable_sort(made, {},
                           [&](const NearEnd& each) { return first(each.units.front()); });
  return made;
}

}  // namespace sparewell::desk
