#include "desk/billing/finding_words.hpp"

#include <array>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/adjustment_words.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using billing::BillingFinding;
using billing::Cause;
using billing::FindingKind;
using billing::Remedy;

std::string pieces(int count) {
  return count_words(count, "piece", "pieces");
}

/// " for the left side".
std::string for_side(const BillingFinding& finding) {
  return finding.side ? say(" for the {} side", shown_word(*finding.side)) : std::string{};
}

std::string money(const std::optional<Money>& amount) {
  return amount ? amount_words(*amount) : said("an unknown sum");
}

std::string other_day(const BillingFinding& finding) {
  return date_words(finding.other_day, said("an unknown day"));
}

std::string other_side(const BillingFinding& finding) {
  if (!finding.side) return said("the other side");
  return say("the {} side", shown_word(*finding.side == Side::left ? Side::right : Side::left));
}

std::string over_limit_words(const BillingFinding& f) {
  const auto since = date_words(f.since);
  if (f.other == word(PayerRuleKind::at_once)) {
    return say("{} of {} in use at once on {}{}; the payer allows {}.", pieces(f.theirs), f.code,
               since, for_side(f), number_words(f.ours));
  }
  if (f.other == word(PayerRuleKind::in_period)) {
    return say("{} of {} handed out within the payer's period up to {}{}; it allows {}.",
               pieces(f.theirs), f.code, since, for_side(f), number_words(f.ours));
  }
  return say("{} bills {} of {} on {}{}, which is for the first part only{}.", f.reference,
             pieces(f.quantity), f.code, since, for_side(f),
             f.other.empty() ? "" : say("; later ones go under {}", f.other));
}

std::string of_claims(const BillingFinding& f) {
  const auto since = date_words(f.since);
  switch (f.kind) {
    case FindingKind::issued_not_billed:
      return say("{} of {} ({}) handed out on {}{} and not billed.", pieces(f.quantity), f.code,
                 f.item.text, since, for_side(f));
    case FindingKind::billed_not_issued:
      return say("{} bills {} of {}{} on {}; nothing answers to it.", f.reference,
                 pieces(f.quantity), f.code, for_side(f), since);
    case FindingKind::wrong_side:
      if (f.cause == Cause::not_recorded) {
        return say("{} bills {} of {} on {} without saying the side as the payer asks.",
                   f.reference, pieces(f.theirs), f.code, since);
      }
      return say("{} of {} handed out on {}{}; {} bills it for {}.", pieces(f.quantity), f.code,
                 since, for_side(f), f.reference, other_side(f));
    case FindingKind::wrong_quantity:
      return say("{} of {} handed out on {}{}, {} billed on {}.", pieces(f.ours), f.code, since,
                 for_side(f), number_words(f.theirs), f.reference);
    case FindingKind::wrong_code:
      return say("{} handed out on {}{} goes under {}; {} bills {}.", f.item.text, since,
                 for_side(f), f.code, f.reference, f.other);
    case FindingKind::wrong_date:
      return say("{} of {} handed out on {}{}; {} bills it on {}.", pieces(f.quantity), f.code,
                 since, for_side(f), f.reference, other_day(f));
    case FindingKind::duplicate:
      return say("{} bills {} of {}{} on {} a second time{}.", f.reference, pieces(f.quantity),
                 f.code, for_side(f), since, f.other.empty() ? "" : say(", after {}", f.other));
    case FindingKind::no_charge:
      return say("{} bills {} of {} on {} without a charge.", f.reference, pieces(f.theirs), f.code,
                 since);
    case FindingKind::code_not_valid:
      return say("{} bills {} on {}, which no code list holds for that day.", f.reference, f.code,
                 since);
    case FindingKind::reversal_without_claim:
      return say("{} takes back {} of {} of {}, which was never billed.", f.reference,
                 pieces(f.quantity), f.code, since);
    case FindingKind::over_limit:
      return over_limit_words(f);
    case FindingKind::replaced_early:
      return say(
          "{} handed out on {}{} replaces one that ended on {} after {} in use; no reason is "
          "recorded.",
          f.item.text, since, for_side(f), other_day(f), count_words(f.theirs, "day", "days"));
    case FindingKind::paper_missing:
      return say("{} handed out on {}{}: the paper \"{}\" is not on file.", f.item.text, since,
                 for_side(f), shown_paper(f.other));
    default:
      return say("What was handed out on {} has no signed delivery sheet on file.", since);
  }
}

/// " (CO 16, information is missing or wrong)".
std::string reasons(const BillingFinding& f) {
  return f.other.empty() ? std::string{} : fmt::format(" ({})", adjustment_words(f.other));
}

std::string of_payments(const BillingFinding& f) {
  const auto since = date_words(f.since);
  const auto claim = f.code.empty() ? f.reference : fmt::format("{}, {}", f.reference, f.code);
  const auto service = f.other_day ? say("{} of {}", claim, other_day(f)) : claim;
  switch (f.kind) {
    case FindingKind::not_answered:
      return say("{}, {} of {}, {}: no answer of the payer, due by {}.", claim, pieces(f.quantity),
                 since, money(f.our_amount), other_day(f));
    case FindingKind::denied:
      return say("{}: on {} the payer paid nothing of {}{}.", service, since, money(f.our_amount),
                 reasons(f));
    case FindingKind::paid_differently:
      return say("{}: {} was allowed on {}, {} was due{}.", service, money(f.their_amount), since,
                 money(f.our_amount), reasons(f));
    default:
      if (f.cause == billing::Cause::keyed_twice) {
        return say("{}: {} was paid on {}; it had been paid before.", service,
                   money(f.their_amount), since);
      }
      return say("{}: {} was paid on {}; no such claim is recorded.", service,
                 money(f.their_amount), since);
  }
}

std::string of_suppliers(const BillingFinding& f) {
  const auto since = date_words(f.since);
  switch (f.kind) {
    case FindingKind::received_not_invoiced:
      return say("{}, {}: {} received by {}, {} invoiced.", f.reference, f.item.text,
                 number_words(f.ours), since, number_words(f.theirs));
    case FindingKind::invoiced_not_received:
      return say("{}, {}: {} invoiced on {}, {} received.", f.reference, f.item.text,
                 number_words(f.theirs), since, number_words(f.ours));
    case FindingKind::price_differs:
      return say("{}, {}: ordered at {}, invoiced at {} on {}, {}.", f.reference, f.item.text,
                 money(f.our_amount), money(f.their_amount), since, pieces(f.quantity));
    case FindingKind::freight_differs:
      return say("{}: {} freight invoiced on {}, {} agreed.", f.reference, money(f.their_amount),
                 since, money(f.our_amount));
    case FindingKind::invoiced_twice:
      return say("{}, {}: {} invoiced on {} that {} had invoiced.", f.reference, f.item.text,
                 pieces(f.quantity), since, f.other);
    case FindingKind::credit_due:
      if (!f.evidence.units.empty()) {
        return say(
            "{} of {}{} taken back in a recall, the first on {}; sending them to {} is not on "
            "record, {} of credit is to be expected.",
            pieces(f.quantity), f.item.text, f.other.empty() ? "" : say(", lot {},", f.other),
            since, f.supplier.text, money(f.money));
      }
      return say("{}: {} of {} sent back on {}, {} of credit still to come.", f.reference,
                 pieces(f.quantity), f.item.text, since, money(f.money));
    default:
      return say(
          "{} of {}{} worn out on {}, {} after its issue{}, within its maker's term of {}; no "
          "credit "
          "asked for.",
          f.item.text, f.patient.text, for_side(f), since, count_words(f.ours, "day", "days"),
          f.wear_age ? say(" and after {:.0f} days of usual use", *f.wear_age) : "",
          count_words(f.theirs, "day", "days"));
  }
}

struct Words {
  std::string_view key;
  const char* words;
};

constexpr std::array<Words, 20> causes{{
    {"unknown", ""},
    {"never_billed", to_say("Nothing of this code was billed near that day.")},
    {"billed_for_fewer", to_say("The claim bills fewer than were handed out.")},
    {"billed_for_more", to_say("The claim bills more than were handed out.")},
    {"side_swapped", to_say("Left and right were likely swapped.")},
    {"keyed_twice", to_say("The line was likely entered twice.")},
    {"resubmitted", to_say("An earlier claim was likely sent again without replacing it.")},
    {"other_patient", to_say("The same code was handed to {} then and not billed.")},
    {"code_mistaken",
     to_say("A part of the same kind was handed out; the code is likely mistaken.")},
    {"date_mistaken", to_say("The day is likely mistaken.")},
    {"came_back", to_say("The part came back soon after.")},
    {"exchanged_by_maker", to_say("It likely replaced a part that the maker answers for.")},
    {"still_on_its_way", to_say("It may still be on its way.")},
    {"price_list_changed", to_say("The price is that of today's catalogue.")},
    {"price_break_missed", to_say("The price is that of a smaller quantity.")},
    {"other_order", to_say("It fits order {}.")},
    {"second_delivery", to_say("More came after the invoice.")},
    {"short_delivery", to_say("The delivery was likely short.")},
    {"free_freight_missed", to_say("The goods were worth free freight.")},
    {"not_recorded", to_say("It may only be missing from the records.")},
}};

constexpr std::array<Words, 15> remedies{{
    {"bill_it", to_say("Bill it, or record why it is not billed.")},
    {"take_back", to_say("Take the claim line back; what was paid for it has to be returned.")},
    {"replace_claim", to_say("Send a corrected claim in its place.")},
    {"record_issue",
     to_say("If it was handed out, put it on record; otherwise take the line back.")},
    {"record_reason", to_say("Ask the prosthetist why it was replaced, and record the reason.")},
    {"file_paper", to_say("Put the paper on file, with its day.")},
    {"get_signature", to_say("Have the delivery sheet signed, and record the day on it.")},
    {"ask_payer", to_say("Ask the payer where the claim stands.")},
    {"appeal", to_say("Look at the payer's reason; correct the claim or appeal.")},
    {"write_off", to_say("Decide whether it is worth going after, or write it off.")},
    {"ask_invoice", to_say("Ask the supplier for the invoice.")},
    {"ask_supplier", to_say("Ask the supplier for a credit or a corrected invoice.")},
    {"record_receipt",
     to_say("If the pieces came, record their receipt; otherwise ask for a credit.")},
    {"claim_warranty", to_say("Ask the supplier for a credit under the maker's warranty.")},
    {"correct_record", to_say("Put the record right.")},
}};

}  // namespace

std::string book_words(billing::Book book) {
  static constexpr std::array<const char*, 3> words{
      to_say("Parts and claims"), to_say("Claims and payments"), to_say("Orders and invoices")};
  return said(words[static_cast<std::size_t>(book)]);
}

std::string_view book_key(billing::Book book) {
  static constexpr std::array<std::string_view, 3> keys{"claims", "payments", "suppliers"};
  return keys[static_cast<std::size_t>(book)];
}

std::string finding_title(FindingKind kind) {
  return capitalised(said(std::string{billing::finding_word(kind)}.c_str()));
}

std::string finding_sentence(const BillingFinding& finding) {
  switch (billing::book_of(finding.kind)) {
    case billing::Book::claims:
      return of_claims(finding);
    case billing::Book::payments:
      return of_payments(finding);
    default:
      return of_suppliers(finding);
  }
}

std::string_view cause_key(Cause cause) {
  return causes[static_cast<std::size_t>(cause)].key;
}

std::string cause_words(const BillingFinding& finding) {
  const auto* words = said(causes[static_cast<std::size_t>(finding.cause)].words);
  return fmt::format(fmt::runtime(words), finding.other);
}

std::string_view remedy_key(Remedy remedy) {
  return remedies[static_cast<std::size_t>(remedy)].key;
}

std::string remedy_words(const BillingFinding& finding) {
  return said(remedies[static_cast<std::size_t>(finding.remedy)].words);
}

}  // namespace sparewell::desk
