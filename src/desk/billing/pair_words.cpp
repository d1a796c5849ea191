#include "desk/billing/pair_words.hpp"

#include <cstdlib>

#include <fmt/format.h>

#include "desk/billing/both_sides.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using billing::Agreement;
using billing::WhyAlone;

std::string units_line(const Clinic& clinic, const std::vector<std::size_t>& units) {
  const auto line = record_line(clinic.units.at(units.front()));
  return units.size() == 1 ? line : fmt::format("{} x {}", units.size(), line);
}

std::string agreement_words(const billing::PairedPieces& pair) {
  const auto apart = count_words(std::abs(pair.days_apart), "day", "days");
  switch (pair.agreement) {
    case Agreement::exact:
      return "side, code and day agree";
    case Agreement::days_apart:
      return fmt::format("{} apart, as is ordinary", apart);
    case Agreement::initial_code:
      return "billed under the code of a first part";
    case Agreement::side_missing:
      return "the claim names no side";
    case Agreement::came_back:
      return "the part came back soon, and is billed all the same";
    case Agreement::side_differs:
      return "the sides differ";
    case Agreement::code_differs:
      return "the codes differ, the kind of part agrees";
    case Agreement::code_unknown:
      return "no list holds the code; patient, side and day agree";
    default:
      return fmt::format("{} apart, more than is ordinary", apart);
  }
}

std::string_view alone_words(WhyAlone why) {
  switch (why) {
    case WhyAlone::nothing_near:
      return "there is none of that code or kind";
    case WhyAlone::paired_already:
      return "the nearest stands for others";
    case WhyAlone::too_far:
      return "the nearest is too many days away";
    case WhyAlone::other_side:
      return "the nearest is for the other side and differs in more";
    case WhyAlone::other_code:
      return "the nearest has another code and differs in more";
    case WhyAlone::no_part:
      return "it is about work, not about parts";
    default:
      return "none is needed: the part came back, or it lies before the books begin";
  }
}

}  // namespace

std::string pair_words(const Clinic& clinic, const billing::PairedPieces& pair) {
  auto text =
      fmt::format("{} <-> {}: {}", units_line(clinic, pair.units),
                  record_line(clinic.claim_lines.at(pair.claim_line)), agreement_words(pair));
  if (pair.part_of_line) text += "; a part of the line";
  if (pair.part_of_issue) text += "; a part of that day's issue";
  if (pair.money) text += fmt::format("; {}", amount_words(*pair.money));
  return fmt::format("{}.", text);
}

std::string leftover_words(const Clinic& clinic, const billing::Leftover& left) {
  const bool is_claim = left.claim_line.has_value();
  auto text = is_claim ? fmt::format("{} of {}", count_words(left.quantity, "piece", "pieces"),
                                     record_line(clinic.claim_lines.at(*left.claim_line)))
                       : units_line(clinic, left.units);
  text += fmt::format(" stands alone: {}", alone_words(left.why));
  if (left.nearest) {
    text +=
        fmt::format("; nearest: {}", is_claim ? record_line(clinic.units.at(*left.nearest))
                                              : record_line(clinic.claim_lines.at(*left.nearest)));
  }
  return fmt::format("{}.", text);
}

}  // namespace sparewell::desk
