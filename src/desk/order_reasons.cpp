#include "desk/order_reasons.hpp"

#include <algorithm>
#include <cmath>
#include <vector>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/line_verdicts.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using supply::ExpectedNeed;
using supply::ProposalLine;
using supply::Reason;
using supply::UncountedStock;

constexpr std::size_t most_named_patients = 4;
constexpr std::size_t most_named_lots = 3;

int missing_promises(const ProposalLine& line) {
  return std::max(0, line.reserved - line.on_hand - line.in_transit - line.on_order);
}

std::string is_or_are(int count) {
  return count == 1 ? "is" : "are";
}

std::string who(const ExpectedNeed& need) {
  return fmt::format("{} {}", need.patient.text, word(need.side));
}

/// "", or what of the reserved pieces is booked for days, and what for later ones.
std::string booked_words(const ProposalLine& line) {
  const Reason& reason = line.reason;
  std::string words;
  if (reason.booked > 0) {
    words = say(", {} of them for {} until {}",
                reason.booked == line.reserved ? "all" : std::to_string(reason.booked),
                reason.patient_ordered ? "days" : "visits", date_words(reason.booked_until));
  }
  words += ".";
  if (reason.booked_later > 0) {
    words += say(" {} booked for later, and not counted yet.",
                 count_words(reason.booked_later, "piece is", "pieces are"));
  }
  return words;
}

std::string position_sentence(const ProposalLine& line) {
  const std::string overdue =
      line.reason.overdue > 0 ? say(" ({} overdue)", line.reason.overdue) : "";
  const std::string in_transit = line.in_transit > 0 ? say(", {} in transit", line.in_transit) : "";
  return say("{} on hand{}, {} on order{}, {} reserved{}", line.on_hand, in_transit, line.on_order,
             overdue, line.reserved, booked_words(line));
}

/// "next order day 2026-12-02 plus 7 days to arrive", and where the days come from.
std::string interval_words(const Reason& reason) {
  std::string words = say("next order day {} plus {} to arrive", date_words(reason.next_order_day),
                          count_words(reason.lead_days, "day", "days"));
  if (reason.lead_days_assumed) words += said(", assumed because the catalogue quotes none");
  if (reason.receipts_seen > 0) {
    words += say(", {}learned from {}", reason.lead_days_assumed ? "then " : "",
                 count_words(reason.receipts_seen, "receipt", "receipts"));
  }
  return words;
}

/// The first few needs, each by `describe`, and how many more there are.
template <class Describe>
std::string needs_words(const Reason& reason, Describe describe) {
  const std::size_t named = std::min(reason.needs.size(), most_named_patients);
  std::vector<std::string> parts;
  for (std::size_t i = 0; i < named; ++i) parts.push_back(describe(reason.needs[i]));
  const auto more = static_cast<int>(reason.needs.size() - named) + reason.more_needs;
  if (more > 0) parts.push_back(fmt::format("{} more", more));
  return fmt::format("{}", fmt::join(parts, ", "));
}

/// What of the expected demand is not for wear: ", 0.4 of it for losses ...".
std::string shares_words(const Reason& reason) {
  constexpr double worth_telling = 0.05;
  std::string words;
  const auto add = [&](double share, std::string_view what) {
    if (share < worth_telling) return;
    words += say(", {:.1f} {}for {}", share, words.empty() ? said("of it ") : "", what);
  };
  add(reason.expected_not_for_wear, said("losses, recalls and changes of size, material or model"));
  add(reason.expected_for_new_patients, said("new patients"));
  return words;
}

/// Empty where the history shows no season.
std::string season_sentence(const Reason& reason) {
  const double percent = 100 * (reason.season_factor - 1);
  if (std::abs(percent) < 0.5) return "";
  return say(
      " In these weeks {:.0f} % {} parts of this kind than on average over the year need "
      "replacing.",
      std::abs(percent), percent > 0 ? "more" : "fewer");
}

/// Where the patients belong who are expected to need it; empty for a clinic with one store.
std::string places_sentence(const Reason& reason) {
  std::vector<std::string> parts;
  for (const auto& place : reason.by_place) {
    if (place.expected >= 0.05) {
      parts.push_back(fmt::format("{:.1f} at {}", place.expected, place.place));
    }
  }
  return parts.empty() ? std::string{} : say(" By branch: {}.", list_words(parts));
}

std::string demand_sentence(const ProposalLine& line) {
  const Reason& reason = line.reason;
  const std::string until =
      say("Until {} ({})", date_words(reason.protected_until), interval_words(reason));
  if (reason.expected_demand < 0.05 && reason.needs.empty()) {
    return until + said(" hardly any use is expected.");
  }
  const std::string amount = reason.expected_demand < 0.05
                                 ? std::string{said("under 0.1")}
                                 : fmt::format("{:.1f}", reason.expected_demand);
  const std::string names = needs_words(reason, [](const ExpectedNeed& need) {
    const std::string from = need.early ? said(", from ") + date_words(*need.early) : "";
    return fmt::format("{} ({}{})", who(need), chance_words(need.chance), from);
  });
  return say("{} {} {} expected to be needed{}{}{}.{}{}", until, amount,
             amount == "1.0" ? "is" : "are", shares_words(reason), names.empty() ? "" : ": ", names,
             places_sentence(reason), season_sentence(reason));
}

std::string target_sentence(const ProposalLine& line) {
  const int missing = missing_promises(line);
  std::string words;
  if (missing > 0) {
    words = say("{} {} neither on hand nor on order. ",
                count_words(missing, "promised piece", "promised pieces"), is_or_are(missing));
  }
  if (line.target > 0) {
    words += fmt::format(
        "{} {} a {:.4g} % {}. ", line.target, line.target == 1 ? "covers" : "cover",
        100 * line.reason.service_target,
        line.reason.target_from_costs
            ? said("target, which follows from the costs of missing and keeping a piece")
            : said("service target"));
  }
  if (line.reason.joins_order) {
    return words + said("It could wait, but this supplier is ordered from today anyway.");
  }
  words += say("Order by {}", date_words(line.order_by));
  if (missing > 0) return words + ".";
  return words + say("; if that waits until {}, the chance to run out is {}.",
                     date_words(line.reason.next_order_day), chance_words(line.chance_short));
}

std::string patient_sentence(const ProposalLine& line) {
  const Reason& reason = line.reason;
  std::string words = said("Ordered for patients, not kept in stock. ");
  if (!reason.needs.empty()) {
    words += say("Expected to wear out: {}. ", needs_words(reason, [&](const ExpectedNeed& need) {
                   return say("{} ({} by {}, order by {})", who(need), chance_words(need.chance),
                              date_words(reason.protected_until),
                              date_words(need.order_by.value_or(line.order_by)));
                 }));
  }
  if (!reason.reserved_for.empty()) {
    std::vector<std::string> patients;
    for (const PatientRef& patient : reason.reserved_for) patients.push_back(patient.text);
    words += say("Promised and neither on hand nor on order: {}. ", list_words(patients));
  }
  words += say("Order by {}", date_words(line.order_by));
  if (!reason.reserved_for.empty()) return words + ".";
  return words + say("; if that waits until {}, the chance that {} worn out before the "
                     "order arrives is {} ({}).",
                     date_words(reason.next_order_day),
                     reason.needs.size() == 1 ? said("the part is") : said("at least one part is"),
                     chance_words(line.chance_short), interval_words(reason));
}

/// "" when packs and minimum order make no more of what is needed.
std::string rounding_sentence(const ProposalLine& line) {
  const Reason& reason = line.reason;
  const int least = reason.least_quantity;
  if (least <= reason.needed || reason.needed == 0) return "";
  std::vector<std::string> causes;
  if (reason.needed < reason.min_order) {
    causes.push_back(say("the minimum order of {}", reason.min_order));
  }
  if (least > std::max(reason.needed, reason.min_order)) {
    causes.push_back(say("packs of {}", reason.pack_size));
  }
  return say("{} {} needed, rounded up to {}: {}.", reason.needed, is_or_are(reason.needed),
             list_words(causes), least);
}

/// What is ordered beyond the need, and why.
std::string extent_sentence(const ProposalLine& line) {
  const Reason& reason = line.reason;
  std::vector<std::string> words;
  if (reason.order_days_covered > 1) {
    words.push_back(say("That covers {} order days, because each order costs freight.",
                        reason.order_days_covered));
  }
  if (reason.saves_a_year >= 1 && line.unit_cost) {
    const Money saved{std::llround(reason.saves_a_year), line.unit_cost->currency};
    words.push_back(say(
        "{} at a time cost less than {}, price and keeping together: {} a year at the present use.",
        line.quantity - reason.for_free_freight, reason.least_quantity, text(saved)));
  }
  if (reason.for_free_freight > 0) {
    words.push_back(say("{} of them {} ordered ahead to reach free freight.",
                        reason.for_free_freight, is_or_are(reason.for_free_freight)));
  }
  if (reason.left_out_for_budget > 0) {
    words.push_back(say("{} more {} wanted; the budget went where it prevents more shortages.",
                        reason.left_out_for_budget,
                        reason.left_out_for_budget == 1 ? "is" : "are"));
  }
  if (reason.chance_expires >= 0.05) {
    words.push_back(say("The chance that not all are used before they expire is {}.",
                        chance_words(reason.chance_expires)));
  }
  return fmt::format("{}", fmt::join(words, " "));
}

std::string lot_words(const UncountedStock& stock) {
  const StockLevel& level = stock.level;
  const std::string lot = level.lot.lot.empty() ? said("no lot number") : "lot " + level.lot.lot;
  std::string reason = stock.quarantined
                           ? std::string{said("in quarantine")}
                           : say("use by {}", date_words(level.lot.use_by.value_or(Date{})));
  if (stock.sort == PlaceSort::on_loan || stock.sort == PlaceSort::at_supplier) {
    reason = word(stock.sort);
  }
  return say("{} at {}, {}", lot, level.place, reason);
}

std::string uncounted_sentence(const std::vector<UncountedStock>& uncounted) {
  if (uncounted.empty()) return "";
  int pieces = 0;
  std::vector<std::string> lots;
  for (const UncountedStock& stock : uncounted) {
    pieces += stock.level.quantity;
    if (lots.size() == most_named_lots) continue;
    lots.push_back(uncounted.size() == 1
                       ? lot_words(stock)
                       : fmt::format("{} of {}", stock.level.quantity, lot_words(stock)));
  }
  if (uncounted.size() > lots.size()) {
    const auto more = static_cast<long long>(uncounted.size() - lots.size());
    lots.push_back(count_words(more, "more lot", "more lots"));
  }
  return say("{} not counted: {}.", pieces, fmt::join(lots, "; "));
}

std::string drafts_sentence(const ProposalLine& line, const Clinic& clinic) {
  std::vector<std::string> drafts;
  for (const OrderLine& order : clinic.order_lines) {
    if (order.state != OrderState::draft || order.item != line.item) continue;
    drafts.push_back(say("{} in draft order {}", order.quantity, order.order_ref));
  }
  if (drafts.empty()) return "";
  return say("Not counted, because not sent: {}.", list_words(drafts));
}

/// Who is named and wears another size now; held_needs.hpp has the reason and the chance of each.
std::string other_size_sentence(const ProposalLine& line, const Clinic& clinic) {
  std::vector<std::string> changing;
  for (const ExpectedNeed& need : line.reason.needs) {
    if (need.unit >= clinic.units.size()) continue;
    const Unit& unit = clinic.units[need.unit];
    if (unit.patient != need.patient || unit.item == line.item) continue;
    changing.push_back(say("{} (now {})", who(need), unit.item.text));
  }
  if (changing.empty()) return "";
  std::ranges::sort(changing);
  changing.erase(std::ranges::unique(changing).begin(), changing.end());
  const auto more = changing.size() - std::min(changing.size(), most_named_patients);
  changing.resize(changing.size() - more);
  if (more > 0) changing.push_back(fmt::format("{} more", more));
  return say("In place of a size that the limb has left, or is forecast to leave: {}.",
             list_words(changing));
}

}  // namespace

std::string why(const ProposalLine& line, const Clinic& clinic) {
  std::vector<std::string> sentences{position_sentence(line)};
  if (line.reason.patient_ordered) {
    sentences.push_back(patient_sentence(line));
  } else {
    sentences.push_back(demand_sentence(line));
    sentences.push_back(target_sentence(line));
  }
  sentences.push_back(other_size_sentence(line, clinic));
  sentences.push_back(rounding_sentence(line));
  sentences.push_back(extent_sentence(line));
  sentences.push_back(uncounted_sentence(line.reason.uncounted));
  sentences.push_back(drafts_sentence(line, clinic));
  sentences.push_back(verdicts_sentence(line, clinic));
  if (line.supplier.empty())
    sentences.emplace_back(said("The catalogue names no supplier for it."));
  if (!line.unit_cost) sentences.emplace_back(said("The catalogue gives no cost for it."));
  std::erase(sentences, "");
  return fmt::format("{}", fmt::join(sentences, " "));
}

std::string held_words(supply::HeldFor reason) {
  switch (reason) {
    case supply::HeldFor::budget:
      return said("Wanted, but the budget went where it prevents more shortages.");
  }
  return "";
}

std::string short_reason(const ProposalLine& line) {
  const Reason& reason = line.reason;
  const int missing = reason.patient_ordered ? static_cast<int>(reason.reserved_for.size())
                                             : missing_promises(line);
  if (missing > 0) {
    return say("{} {} neither on hand nor on order",
               count_words(missing, "promised piece", "promised pieces"), is_or_are(missing));
  }
  if (!reason.patient_ordered) {
    return say("{} there or coming, {} wanted",
               line.on_hand + line.in_transit + line.on_order - line.reserved, line.target);
  }
  const std::string whom =
      reason.needs.size() == 1
          ? who(reason.needs.front())
          : count_words(static_cast<long long>(reason.needs.size()), "part", "parts") +
                said(" in use");
  return "for " + whom;
}

}  // namespace sparewell::desk
