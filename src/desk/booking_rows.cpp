#include "desk/booking_rows.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::Serving;

std::string coming_words(const Serving& serving) {
  if (!serving.expected_on) return said("in transit");
  return serving.late > 0 ? said("on order")
                          : say("on order, expected {}", date_words(*serving.expected_on));
}

std::string late_words(const Serving& serving) {
  return serving.expected_on
             ? say("on order, expected {}, which is too late", date_words(*serving.expected_on))
             : said("on order, which is too late");
}

}  // namespace

std::string booking_words(const Reservation& booking) {
  const auto pieces = count_words(booking.quantity, "piece", "pieces");
  if (!booking.needed_on) {
    return say("{} of {} without a day at {}", pieces, booking.item.text, booking.place);
  }
  return say("{} of {} for {} at {}", pieces, booking.item.text, date_words(*booking.needed_on),
             booking.place);
}

std::string serving_words(const Serving& serving, Date today) {
  const int all = serving.booking->quantity;
  std::vector<std::string> parts;
  const auto add = [&](int pieces, const std::string& words) {
    if (pieces == 0) return;
    parts.push_back(pieces == all ? words : fmt::format("{} {}", pieces, words));
  };
  add(serving.here, said("in stock"));
  add(serving.elsewhere, say("in stock at {}", serving.other_place));
  add(serving.coming, coming_words(serving));
  add(serving.late, late_words(serving));
  add(serving.missing, said("neither in stock nor on order"));
  const auto& day = serving.booking->needed_on;
  const std::string passed = day && *day < today ? said("the day has passed; ") : "";
  return passed + fmt::format("{}", fmt::join(parts, ", "));
}

std::string serving_key(const Serving& serving) {
  if (serving.missing > 0) return "missing";
  if (serving.late > 0) return "late";
  if (serving.coming > 0) return "coming";
  return serving.elsewhere > 0 ? "elsewhere" : "served";
}

std::vector<Serving> bookings_of(const Clinic& clinic, const std::string& patient, Date today) {
  auto made = supply::servings(clinic, today);
  std::erase_if(made, [&](const Serving& serving) {
    return !patient.empty() && serving.booking->patient.text != patient;
  });
  return made;
}

std::vector<std::string> booking_sentences(const Clinic& clinic, const PatientRef& patient,
                                           Date today) {
  std::vector<std::string> made;
  for (const auto& serving : bookings_of(clinic, patient.text, today)) {
    made.push_back(
        say("Booked: {}; {}.", booking_words(*serving.booking), serving_words(serving, today)));
  }
  return made;
}

}  // namespace sparewell::desk
