#include "desk/suspect_words.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desk/substance_table.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

constexpr double even_chance = 0.5;
/// What ranking_verdict is about, if not a part.
constexpr const char* substance = "substance";
/// Ratios beyond that say no more than "many times".
constexpr double most_told = 100;

std::string times_words(double ratio) {
  if (ratio > most_told) return say("over {:.0f}", most_told);
  if (ratio < 0.095) return said("under 0.1");
  return ratio < 9.5 ? say("{:.1f}", ratio) : fmt::format("{:.0f}", ratio);
}

std::string interval_words(const care::RateRatio& ratio) {
  if (ratio.high) {
    return say("95 % interval {} to {}", times_words(ratio.low), times_words(*ratio.high));
  }
  if (ratio.low < 0.095) return said("the 95 % interval leaves every ratio open");
  return say("95 % interval {} or more", times_words(ratio.low));
}

std::string ratio_words(const care::Suspect& suspect) {
  if (!suspect.ratio)
    return said("It was worn on all of these days, so that they say nothing about it.");
  const auto& ratio = *suspect.ratio;
  std::string words = said("None began without it");
  if (suspect.counts.exposed_onsets == 0) {
    words = said("All began without it");
  } else if (ratio.estimate) {
    words = say("That is {} times as often as without it", times_words(*ratio.estimate));
  }
  words += fmt::format(" ({})", interval_words(ratio));
  if (ratio.high && *ratio.high < 1) return words + said(", which speaks against it.");
  return words + (ratio.low <= 1 ? said(": too little to say.") : ".");
}

}  // namespace

std::string suspect_name(const care::Exposure& exposure) {
  switch (exposure.basis) {
    case care::Basis::assumed:
      return say("{} (assumed from the material)", exposure.name);
    case care::Basis::may_contain:
      return say("{} (which may be in it)", exposure.name);
    default:
      return exposure.name;
  }
}

Telling telling(const care::Suspects& found, const care::Ranking& ranking) {
  if (found.onsets.empty()) return Telling::no_reaction;
  const bool contrast = std::ranges::any_of(
      ranking.suspects, [](const care::Suspect& suspect) { return suspect.ratio.has_value(); });
  if (!contrast) return Telling::no_contrast;
  const auto& first = ranking.suspects.front();
  const bool above = first.ratio && first.ratio->low > 1 && first.counts.exposed_onsets > 1;
  return above && first.chance > even_chance ? Telling::leads : Telling::too_little;
}

std::string ranking_verdict(const care::Suspects& found, const care::Ranking& ranking,
                            const std::string& what) {
  switch (telling(found, ranking)) {
    case Telling::no_reaction:
      return said("No reaction is recorded while parts were worn; there is nothing to compare.");
    case Telling::no_contrast:
      return what == substance ? said(
                                     "Every substance was worn on all of these days, so that "
                                     "nothing can be told from them.")
                               : said(
                                     "Every part was worn on all of these days, so that nothing "
                                     "can be told from them.");
    case Telling::too_little:
      return what == substance ? said("Too little to say which substance it is, if any.")
                               : said("Too little to say which part it is, if any.");
    case Telling::leads:
      break;
  }
  const auto& first = ranking.suspects.front();
  if (first.alike.size() > 1) {
    return say(
        "What stands out: {}, with {} chance that this, or what was worn on the same days, is the "
        "cause.",
        first.alike.front().name, chance_words(first.chance));
  }
  return say("What stands out: {}, with {} chance that this is the cause.",
             first.alike.front().name, chance_words(first.chance));
}

std::string suspect_words(const care::Suspect& suspect) {
  const auto& counts = suspect.counts;
  const auto& name = suspect.alike.front();
  if (counts.onsets == 0) return fmt::format("{}.", capitalised(suspect_name(name)));
  const auto share =
      counts.exposed_days == counts.days
          ? std::string{said("all of the time")}
          : say("{} of the time",
                chance_words(static_cast<double>(counts.exposed_days) / counts.days));
  auto words =
      say("{}, {} chance: {} of {} began while this was worn ({}). {}",
          capitalised(suspect_name(name)), chance_words(suspect.chance), counts.exposed_onsets,
          count_words(counts.onsets, "reaction", "reactions"), share, ratio_words(suspect));
  if (suspect.alike.size() == 1) return words;
  std::vector<std::string> others;
  for (std::size_t i = 1; i < suspect.alike.size(); ++i) {
    others.push_back(suspect_name(suspect.alike[i]));
  }
  return words +
         say(" It cannot be told apart from {}: worn on the same days.", list_words(others));
}

std::vector<std::string> suspect_limits(const care::Suspects& found) {
  std::vector<std::string> made;
  if (found.not_observed > 0) {
    made.push_back(say_n(
        "{} reaction began on days for which no part is recorded as worn and cannot be compared.",
        "{} reactions began on days for which no part is recorded as worn and cannot be compared.",
        static_cast<unsigned long>(found.not_observed), number_words(found.not_observed)));
  }
  if (!found.not_known.empty()) {
    std::vector<std::string> items;
    for (const auto& item : found.not_known) items.push_back(item.text);
    made.push_back(
        say_n("What {} holds is not known; ask the maker. Substances in it are not among these.",
              "What {} hold is not known; ask the maker. Substances in them are not among these.",
              items.size(), list_words(items)));
  }
  if (!found.recorded.empty()) {
    std::vector<std::string> known;
    for (const auto& noted : found.recorded) {
      known.push_back(noted.established_by.empty()
                          ? noted.substance
                          : fmt::format("{} ({})", noted.substance, noted.established_by));
    }
    made.push_back(say("Recorded as sensitive to {}; the chances do not reckon with that.",
                       list_words(known)));
  }
  return made;
}

std::vector<std::string> suspect_cautions() {
  return {said("This sets the days of reactions beside the days of wear; it is no diagnosis. Only "
               "a patch test, read by a clinician, shows a contact allergy, and every lasting "
               "dermatitis of the residual limb should be patch tested (J Am Acad Dermatol 42 "
               "(2000) 501-507). Thioureas in rubber are missed by common ready-made series "
               "(Dermatitis 15 (2004) 206-209)."),
          said("Chances begin at one in three that something recorded is the cause, alike for "
               "each: about one third of those with a dermatitis of the residual limb had an "
               "allergic one (J Am Acad Dermatol, as above)."),
          said("Friction, sweat, heat, washing, infection and fit cause reactions as well and are "
               "not compared. Parts that were taken away because of a reaction were worn for a "
               "shorter time, which makes them look somewhat worse than they are."),
          care_caution()};
}

std::vector<care::Suspects> suspects_of_patient(const Clinic& clinic, const PatientRef& patient,
                                                Date today) {
  const auto substances = substances_of(clinic, today);
  std::vector<care::Suspects> made;
  for (const Side side : care::sides_worn(clinic, patient)) {
    made.push_back(care::suspects_of(clinic, patient, side, *substances, today));
  }
  return made;
}

std::string suspects_text(const care::Suspects& found) {
  const auto reactions =
      count_words(static_cast<long long>(found.onsets.size()), "reaction", "reactions");
  const auto observed = count_words(care::day_count(found.at_risk), "day", "days");
  auto text = found.side == Side::left ? say("Left side, {} on {}.\n", reactions, observed)
                                       : say("Right side, {} on {}.\n", reactions, observed);
  const auto add = [&](const care::Ranking& ranking, const std::string& title,
                       const std::string& what) {
    text += fmt::format("\n{}: {}\n", title, ranking_verdict(found, ranking, what));
    if (found.onsets.empty()) return;
    for (const auto& suspect : ranking.suspects)
      text += fmt::format("- {}\n", suspect_words(suspect));
    text += say("- None of these, {} chance.\n", chance_words(ranking.none));
  };
  add(found.substances, said("Substances"), substance);
  add(found.items, said("Parts, whatever they declare"), "part");
  for (const auto& limit : suspect_limits(found)) text += fmt::format("{}\n", limit);
  return text;
}

}  // namespace sparewell::desk
