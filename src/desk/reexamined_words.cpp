#include "desk/reexamined_words.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string held_words(const care::Examined& part) {
  switch (part.holding) {
    case care::Holding::worn:
      return say("{} (worn)", part.item.text);
    case care::Holding::booked:
      return say("{} (booked)", part.item.text);
    default:
      return say("{} (on order)", part.item.text);
  }
}

std::string line_of(const care::Worsened& each, const ClinicIndex& index) {
  static const Item unknown;
  const Item* item = index.item(each.now.item);
  auto who = each.now.patient.text;
  if (each.now.side) who += fmt::format(", {}", shown_word(*each.now.side));
  const auto before = each.before ? say(" Before: {}.", shown_word(*each.before)) : std::string{};
  return fmt::format("{}, {}: {}{}", who, held_words(each.now),
                     sensitivity_finding(each.now.verdict, item ? *item : unknown).words, before);
}

}  // namespace

std::string holding_words(care::Holding holding) {
  if (holding == care::Holding::worn) return "worn";
  return holding == care::Holding::booked ? "booked" : "on order";
}

std::vector<std::string> reexamined_lines(const Reexamined& change, const ClinicIndex& index) {
  std::vector<std::string> lines{change.done};
  if (change.patients == 0) {
    lines.emplace_back(said("No sensitivity is recorded of anyone, so nobody was examined."));
    return lines;
  }
  const auto examined = say("Examined: {} of whom a sensitivity is recorded",
                            count_words(change.patients, "patient", "patients"));
  if (change.newly.empty()) {
    lines.push_back(say("{}; none of them is newly affected.", examined));
    return lines;
  }
  lines.push_back(say("{}; newly affected: {}.", examined,
                      count_words(static_cast<int>(change.newly.size()), "part", "parts")));
  for (const auto& each : change.newly) lines.push_back(line_of(each, index));
  lines.push_back(care_caution());
  return lines;
}

}  // namespace sparewell::desk
