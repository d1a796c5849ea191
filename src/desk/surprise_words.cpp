#include "desk/surprise_words.hpp"

#include <algorithm>
#include <cmath>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string odds_words(double chance) {
  if (chance > 0.1) return chance_words(chance);
  // Smaller numbers would promise more than the model knows.
  if (chance < 1e-6) return said("less than once in 1,000,000 times");
  return say("once in {}", count_words(std::lround(1 / chance), "time", "times"));
}

auto flagged_of(const std::vector<wear::EarlyEndings>& tested) {
  return std::ranges::count_if(tested, &wear::EarlyEndings::flagged);
}

std::string lots_flagged_words(const std::vector<wear::EarlyEndings>& lots) {
  return say_n("{} of {} lot tested flagged", "{} of {} lots tested flagged", lots.size(),
               flagged_of(lots), number_words(std::ssize(lots)));
}

std::string items_flagged_words(const std::vector<wear::EarlyEndings>& items) {
  return say_n("{} of {} item tested flagged", "{} of {} items tested flagged", items.size(),
               flagged_of(items), number_words(std::ssize(items)));
}

}  // namespace

std::string early_endings_words(const wear::EarlyEndings& endings) {
  const std::string what = endings.lot.empty()
                               ? say("Item {}", endings.item.text)
                               : say("Lot {} of {}", endings.lot, endings.item.text);
  return say(
      "{}: {} of {} wore out early, {:.1f} were to be expected; so many by chance: {}. {} of {} "
      "had such an ending.",
      what, endings.early, count_words(endings.units, "unit", "units"), endings.expected,
      odds_words(endings.p_value), endings.early_patients,
      count_words(endings.patients, "patient", "patients"));
}

std::string surprises_summary(const wear::Surprises& surprises) {
  std::string text = fmt::format("{}, {}.", lots_flagged_words(surprises.lots),
                                 items_flagged_words(surprises.items));
  if (surprises.lots_too_small > 0) {
    text += say_n(" {} lot of fewer than {} units could not be judged.",
                  " {} lots of fewer than {} units could not be judged.",
                  static_cast<unsigned long>(surprises.lots_too_small),
                  number_words(surprises.lots_too_small), wear::fewest_early);
  }
  if (surprises.units_without_lot > 0) {
    text += say_n(" {} unit has no recorded lot.", " {} units have no recorded lot.",
                  static_cast<unsigned long>(surprises.units_without_lot),
                  number_words(surprises.units_without_lot));
  }
  return text;
}

std::string surprises_caution() {
  return said(
      "A flag is a reason to look at the parts and to ask the maker, not proof of a defect: the "
      "patients, their use or the recorded dates may be the cause. The absence of a flag is not "
      "proof of safety.");
}

}  // namespace sparewell::desk
