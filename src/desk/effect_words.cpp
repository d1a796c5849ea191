#include "desk/effect_words.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/part_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

/// "one", "two" ... for small whole numbers, figures for all others.
std::string amount_in_words(double number) {
  if (number == 1) return said("one");
  if (number == 2) return said("two");
  if (number == 3) return said("three");
  if (number == 4) return said("four");
  return say("{:g}", number);
}

std::string factor_words(wear::Factor factor, double amount) {
  const auto written = amount_in_words(amount);
  const unsigned long number = amount == 1 ? 1 : 2;
  switch (factor) {
    case wear::Factor::activity:
      return say_n("{} activity level higher", "{} activity levels higher", number, written);
    case wear::Factor::kneeling_hours:
      return say_n("kneeling {} hour a day", "kneeling {} hours a day", number, written);
    case wear::Factor::wear_hours:
      return say_n("worn {} hour a day longer", "worn {} hours a day longer", number, written);
    case wear::Factor::sweating_low:
      return said("low sweating");
    case wear::Factor::sweating_high:
      return said("high sweating");
    case wear::Factor::impact_sport:
      return said("impact sport");
  }
  return std::string{wear::factor_name(factor)};
}

}  // namespace

std::string effect_words(Kind kind, const wear::FactorEffect& effect) {
  const std::string factor = factor_words(effect.factor, effect.amount);
  if (!effect.is_clear()) {
    return say("{}: no clear effect on {} ({:.2f} to {:.2f} times as long)", factor,
               kind_plural(kind), effect.low, effect.high);
  }
  return say("{}: {} last {:.2f} times as long ({:.2f} to {:.2f})", factor, kind_plural(kind),
             effect.ratio, effect.low, effect.high);
}

std::string effect_grounds(const wear::KindLife& life) {
  std::string grounds =
      life.wear_endings == 0
          ? say("No {} has worn out in the records yet: these are general expectations, not "
                "experience of this clinic.",
                shown_word(life.kind))
          : say("From {} with {}.",
                fmt::format("{} {}", number_words(life.units),
                            life.units == 1 ? shown_word(life.kind) : kind_plural(life.kind)),
                count_words(life.wear_endings, "wear ending", "wear endings"));
  return life.note.empty() ? grounds : fmt::format("{} {}", grounds, life.note);
}

std::vector<std::string> fit_notes(const wear::ClinicLife& fitted) {
  std::vector<std::string> notes;
  for (const auto& [kind, life] : fitted.kinds) {
    if (!life.note.empty()) notes.push_back(fmt::format("{}: {}", kind_plural(kind), life.note));
  }
  return notes;
}

std::string effect_caution() {
  return said(
      "Each interval holds the true figure with 80 % chance: one in five does not. A factor "
      "that goes with another one, or with something that is not recorded, may show that one's "
      "effect.");
}

}  // namespace sparewell::desk
