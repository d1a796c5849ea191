#include "desk/billing/pair_words.hpp"

#include <cstdlib>

#include <fmt/format.h>

#include "clinic/say.hpp"
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
      return said("side, code and day agree");
    case Agreement::days_apart:
      return say("{} apart, as is ordinary", apart);
    case Agreement::initial_code:
      return said("billed under the code of a first part");
    case Agreement::side_missing:
      return said("the claim names no side");
    case Agreement::came_back:
      return said("the part came back soon, and is billed all the same");
    case Agreement::side_differs:
      return said("the sides differ");
    case Agreement::code_differs:
      return said("the codes differ, the kind of part agrees");
    case Agreement::code_unknown:
      return said("no list holds the code; patient, side and day agree");
    default:
      return say("{} apart, more than is ordinary", apart);
  }
}

const char* alone_words(WhyAlone why) {
  switch (why) {
    case WhyAlone::nothing_near:
      return said("there is none of that code or kind");
    case WhyAlone::paired_already:
      return said("the nearest stands for others");
    case WhyAlone::too_far:
      return said("the nearest is too many days away");
    case WhyAlone::other_side:
      return said("the nearest is for the other side and differs in more");
    case WhyAlone::other_code:
      return said("the nearest has another code and differs in more");
    case WhyAlone::no_part:
      return said("it is about work, not about parts");
    default:
      return said("none is needed: the part came back, or it lies before the books begin");
  }
}

}  // namespace

std::string pair_words(const Clinic& clinic, const billing::PairedPieces& pair) {
  auto text =
      fmt::format("{} <-> {}: {}", units_line(clinic, pair.units),
                  record_line(clinic.claim_lines.at(pair.claim_line)), agreement_words(pair));
  if (pair.part_of_line) text += said("; a part of the line");
  if (pair.part_of_issue) text += said("; a part of that day's issue");
  if (pair.money) text += fmt::format("; {}", amount_words(*pair.money));
  return fmt::format("{}.", text);
}

std::string leftover_words(const Clinic& clinic, const billing::Leftover& left) {
  const bool is_claim = left.claim_line.has_value();
  auto text = is_claim ? say("{} of {}", count_words(left.quantity, "piece", "pieces"),
                             record_line(clinic.claim_lines.at(*left.claim_line)))
                       : units_line(clinic, left.units);
  text += say(" stands alone: {}", alone_words(left.why));
  if (left.nearest) {
    text += say("; nearest: {}", is_claim ? record_line(clinic.units.at(*left.nearest))
                                          : record_line(clinic.claim_lines.at(*left.nearest)));
  }
  return fmt::format("{}.", text);
}

}  // namespace sparewell::desk
