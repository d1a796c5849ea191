#include "desk/fit_words.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/issue_words.hpp"
#include "desk/length_words.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

std::string side_words(Side side) {
  return side == Side::left ? said("Left") : said("Right");
}

std::string next_words(const FitPart& part) {
  if (!part.wants_next) return "";
  const double cm = part.outside_now() ? part.check.circumference_cm.value_or(0)
                                       : part.predicted->circumference_cm;
  if (!part.next) {
    return say("The catalogue has no other size of the same part that suits {}.", length_words(cm));
  }
  if (part.next_conflicts) {
    return say("{} would suit {}, and conflicts with a recorded sensitivity.", part.next->text,
               length_words(cm));
  }
  const auto stock =
      part.next_on_hand == 0
          ? std::string{said("none is in stock")}
          : say_n("{} piece is in stock", "{} pieces are in stock",
                  static_cast<unsigned long>(part.next_on_hand), number_words(part.next_on_hand));
  return say("{} suits {}; {}.", part.next->text, length_words(cm), stock);
}

std::string chance_sentence(const FitPart& part, Date today) {
  auto words = say("By {} it is foreseen at {}, with a chance of {} to be outside the size",
                   date_words(part.by), prediction_words(*part.predicted),
                   chance_words(part.chance_outside()));
  if (part.chance_outside() >= 0.01) {
    words +=
        part.chance_below > part.chance_above ? said(" (mostly below)") : said(" (mostly above)");
  }
  words += ".";
  if (!part.likely_outside) {
    return words +
           said(" It is not foreseen to be more likely outside than not within three years.");
  }
  if (*part.likely_outside == today) {
    return words + said(" By the trend it is more likely outside than not already: measure it.");
  }
  return say("{} From {} on it is more likely outside than not.", words,
             date_words(*part.likely_outside));
}

}  // namespace

std::string fit_title(const FitPart& part) {
  const auto units = part.units > 1 ? say(" ({} in use)", part.units) : std::string{};
  return fmt::format("{}, {}{}", side_words(part.side), part.item.code.text, units);
}

std::vector<std::string> fit_sentences(const FitPart& part, Date today) {
  std::vector<std::string> made{fit_finding(part.check, part.item, part.side).words};
  if (part.trend) {
    made.push_back(
        say("{} Learned from {}.", change_words(*part.trend), count_of_readings(*part.trend)));
    if (part.trend->readings().size() < 3) {
      made.back() += said(" So few say little: most of this is what limbs do in general.");
    }
    made.push_back(chance_sentence(part, today));
  }
  if (auto next = next_words(part); !next.empty()) made.push_back(std::move(next));
  return made;
}

std::string leaving_line(const FitPart& part, Date today) {
  std::string words;
  if (part.outside_now()) {
    words = fit_finding(part.check, part.item, part.side).words;
  } else {
    words = say("The size is {}; last measured {}. {}", range_words(part.item),
                reading_words(part.readings.back()), chance_sentence(part, today));
  }
  if (const auto next = next_words(part); !next.empty()) words += " " + next;
  return words;
}

std::string not_known_words(const LeavingParts& leaving) {
  if (leaving.not_known == 0) return "";
  return say(
      "Nothing is known of {} in use, because the limb was not measured at the height "
      "of the size.",
      count_words(leaving.not_known, "other size", "other sizes"));
}

std::string sock_words(const SockFinding& socks) {
  return say(
      "{}: the socks of the last six months have {:.1f} plies on average ({}), those before {:.1f} "
      "({}). The limb may have shrunk: measure it. Plies of socks worn together do not add up.",
      side_words(socks.side), socks.sign.plies_lately,
      count_words(socks.sign.socks_lately, "sock", "socks"), socks.sign.plies_before,
      count_words(socks.sign.socks_before, "sock", "socks"));
}

std::string nothing_known_words(const FitReport& report) {
  if (!report.measured) {
    return said(
        "No circumference is recorded, so that nothing is known of the fit. Measure the limb at "
        "the heights at which the sizes are stated, and record it (measure, or Patients, Record "
        "a measurement).");
  }
  if (report.parts.empty()) return said("Nothing that has a size is in use.");
  return "";
}

std::string fit_caution() {
  return say(
      "A limb may change faster or slower than its past says, and differs from morning to evening. "
      "{}",
      care_caution());
}

std::string fit_text(const FitReport& report) {
  std::string text;
  if (const auto nothing = nothing_known_words(report); !nothing.empty()) text += nothing + "\n";
  for (const FitPart& part : report.parts) {
    text += fmt::format("{}\n", fit_title(part));
    for (const auto& sentence : fit_sentences(part, report.today)) {
      text += fmt::format("  {}\n", sentence);
    }
  }
  for (const SockFinding& socks : report.socks) text += sock_words(socks) + "\n";
  return text + fit_caution();
}

}  // namespace sparewell::desk
