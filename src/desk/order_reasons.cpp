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

unsigned long grammatical(int count) {
  return static_cast<unsigned long>(count);
}

std::string missing_promises_words(int missing) {
  return say_n("{} promised piece is neither on hand nor on order",
               "{} promised pieces are neither on hand nor on order", grammatical(missing),
               number_words(missing));
}

std::string who(const ExpectedNeed& need) {
  return fmt::format("{} {}", need.patient.text, shown_word(need.side));
}

std::string booked_until_words(const Reason& reason, int reserved) {
  const auto until = date_words(reason.booked_until);
  if (reason.booked == reserved) {
    return reason.patient_ordered ? say(", all of them for days until {}", until)
                                  : say(", all of them for visits until {}", until);
  }
  return reason.patient_ordered ? say(", {} of them for days until {}", reason.booked, until)
                                : say(", {} of them for visits until {}", reason.booked, until);
}

/// "", or what of the reserved pieces is booked for days, and what for later ones.
std::string booked_words(const ProposalLine& line) {
  const Reason& reason = line.reason;
  std::string words;
  if (reason.booked > 0) words = booked_until_words(reason, line.reserved);
  words += ".";
  if (reason.booked_later > 0) {
    words += say_n(" {} piece is booked for later, and not counted yet.",
                   " {} pieces are booked for later, and not counted yet.",
                   grammatical(reason.booked_later), number_words(reason.booked_later));
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
    const auto receipts = count_words(reason.receipts_seen, "receipt", "receipts");
    words += reason.lead_days_assumed ? say(", then learned from {}", receipts)
                                      : say(", learned from {}", receipts);
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
  if (more > 0) parts.push_back(say("{} more", more));
  return fmt::format("{}", fmt::join(parts, ", "));
}

/// With one decimal.
bool reads_as_one(double amount) {
  return fmt::format("{:.1f}", amount) == "1.0";
}

/// What of the expected demand is not for wear: ", 0.4 of it for losses ...".
std::string shares_words(const Reason& reason) {
  constexpr double worth_telling = 0.05;
  std::string words;
  if (const double share = reason.expected_not_for_wear; share >= worth_telling) {
    words +=
        say(", {:.1f} of it for losses, recalls and changes of size, material or model", share);
  }
  if (const double share = reason.expected_for_new_patients; share >= worth_telling) {
    words += words.empty() ? say(", {:.1f} of it for new patients", share)
                           : say(", {:.1f} for new patients", share);
  }
  return words;
}

/// Empty where the history shows no season.
std::string season_sentence(const Reason& reason) {
  const double percent = 100 * (reason.season_factor - 1);
  if (std::abs(percent) < 0.5) return "";
  return percent > 0 ? say(" In these weeks {:.0f} % more parts of this kind than on average over "
                           "the year need replacing.",
                           percent)
                     : say(" In these weeks {:.0f} % fewer parts of this kind than on average "
                           "over the year need replacing.",
                           -percent);
}

/// Where the patients belong who are expected to need it; empty for a clinic with one store.
std::string places_sentence(const Reason& reason) {
  std::vector<std::string> parts;
  for (const auto& place : reason.by_place) {
    if (place.expected >= 0.05) {
      parts.push_back(say("{:.1f} at {}", place.expected, place.place));
    }
  }
  return parts.empty() ? std::string{} : say(" By branch: {}.", list_words(parts));
}

/// ": P-7 left (35 %, from 2 Dec 2026)" and so on; empty where nobody is named.
std::string named_words(const Reason& reason) {
  const auto names = needs_words(reason, [](const ExpectedNeed& need) {
    const auto chance = chance_words(need.chance);
    return need.early ? say("{} ({}, from {})", who(need), chance, date_words(*need.early))
                      : fmt::format("{} ({})", who(need), chance);
  });
  return names.empty() ? names : ": " + names;
}

std::string demand_sentence(const ProposalLine& line) {
  const Reason& reason = line.reason;
  const auto until = date_words(reason.protected_until);
  const auto interval = interval_words(reason);
  if (reason.expected_demand < 0.05 && reason.needs.empty()) {
    return say("Until {} ({}) hardly any use is expected.", until, interval);
  }
  const bool little = reason.expected_demand < 0.05;
  const auto amount = little ? said("under 0.1") : say("{:.1f}", reason.expected_demand);
  const auto whose = shares_words(reason) + named_words(reason);
  const auto words =
      !little && reads_as_one(reason.expected_demand)
          ? say("Until {} ({}) {} is expected to be needed{}.", until, interval, amount, whose)
          : say("Until {} ({}) {} are expected to be needed{}.", until, interval, amount, whose);
  return words + places_sentence(reason) + season_sentence(reason);
}

std::string cover_sentence(const ProposalLine& line) {
  const double percent = 100 * line.reason.service_target;
  if (line.reason.target_from_costs) {
    return say_n(
        "{} covers a {:.4g} % target, which follows from the costs of missing and keeping a "
        "piece. ",
        "{} cover a {:.4g} % target, which follows from the costs of missing and keeping a "
        "piece. ",
        grammatical(line.target), line.target, percent);
  }
  return say_n("{} covers a {:.4g} % service target. ", "{} cover a {:.4g} % service target. ",
               grammatical(line.target), line.target, percent);
}

std::string target_sentence(const ProposalLine& line) {
  const int missing = missing_promises(line);
  std::string words;
  if (missing > 0) words = missing_promises_words(missing) + ". ";
  if (line.target > 0) words += cover_sentence(line);
  if (line.reason.joins_order) {
    return words + said("It could wait, but this supplier is ordered from today anyway.");
  }
  const auto order_by = date_words(line.order_by);
  if (missing > 0) return words + say("Order by {}.", order_by);
  return words + say("Order by {}; if that waits until {}, the chance to run out is {}.", order_by,
                     date_words(line.reason.next_order_day), chance_words(line.chance_short));
}

std::string wait_sentence(const ProposalLine& line) {
  const auto by = date_words(line.order_by);
  const auto until = date_words(line.reason.next_order_day);
  const auto chance = chance_words(line.chance_short);
  const auto interval = interval_words(line.reason);
  return line.reason.needs.size() == 1
             ? say("Order by {}; if that waits until {}, the chance that the part is worn out "
                   "before the order arrives is {} ({}).",
                   by, until, chance, interval)
             : say("Order by {}; if that waits until {}, the chance that at least one part is "
                   "worn out before the order arrives is {} ({}).",
                   by, until, chance, interval);
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
  if (!reason.reserved_for.empty()) {
    return words + say("Order by {}.", date_words(line.order_by));
  }
  return words + wait_sentence(line);
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
  return say_n("{} is needed, rounded up to {}: {}.", "{} are needed, rounded up to {}: {}.",
               grammatical(reason.needed), reason.needed, list_words(causes), least);
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
    words.push_back(say_n("{} of them is ordered ahead to reach free freight.",
                          "{} of them are ordered ahead to reach free freight.",
                          grammatical(reason.for_free_freight), reason.for_free_freight));
  }
  if (reason.left_out_for_budget > 0) {
    words.push_back(say_n("{} more is wanted; the budget went where it prevents more shortages.",
                          "{} more are wanted; the budget went where it prevents more shortages.",
                          grammatical(reason.left_out_for_budget), reason.left_out_for_budget));
  }
  if (reason.chance_expires >= 0.05) {
    words.push_back(say("The chance that not all are used before they expire is {}.",
                        chance_words(reason.chance_expires)));
  }
  return fmt::format("{}", fmt::join(words, " "));
}

std::string lot_words(const UncountedStock& stock) {
  const StockLevel& level = stock.level;
  const std::string lot =
      level.lot.lot.empty() ? said("no lot number") : say("lot {}", level.lot.lot);
  std::string reason = stock.quarantined
                           ? std::string{said("in quarantine")}
                           : say("use by {}", date_words(level.lot.use_by.value_or(Date{})));
  if (stock.sort == PlaceSort::on_loan || stock.sort == PlaceSort::at_supplier) {
    reason = shown_word(stock.sort);
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
    lots.push_back(uncounted.size() == 1 ? lot_words(stock)
                                         : say("{} of {}", stock.level.quantity, lot_words(stock)));
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
  if (more > 0) changing.push_back(say("{} more", more));
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
    return missing_promises_words(missing);
  }
  if (!reason.patient_ordered) {
    return say("{} there or coming, {} wanted",
               line.on_hand + line.in_transit + line.on_order - line.reserved, line.target);
  }
  const auto parts = reason.needs.size();
  if (parts == 1) return say("for {}", who(reason.needs.front()));
  return say_n("for {} part in use", "for {} parts in use", parts,
               number_words(static_cast<long long>(parts)));
}

}  // namespace sparewell::desk
