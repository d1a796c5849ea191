#include "desk/card_lines.hpp"

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "clinic/say.hpp"

namespace sparewell::desk {

std::string short_facts(const PatientCard& card) {
  constexpr std::size_t most_bookings = 2;
  auto text = card.visit;
  if (card.bookings.size() > most_bookings) {
    text += fmt::format(" {}", say("{} bookings: see History.", card.bookings.size()));
  } else {
    for (const auto& booking : card.bookings) text += fmt::format(" {}", booking);
  }
  return fmt::format("{} {}", text, say("Use: {}", card.usage));
}

std::string sensitivity_line(const PatientCard& card) {
  return say("Sensitivities: {}", fmt::format("{}", fmt::join(card.sensitivities, " ")));
}

}  // namespace sparewell::desk
