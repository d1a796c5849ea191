#include <algorithm>

#include "clinic/say.hpp"
#include "desk/billing/paper_noting.hpp"
#include "desk/history/entries.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

void add_claims(History& history, const Day& day, const PatientRef& patient) {
  for (const ClaimLine& each : day.clinic().claim_lines) {
    if (each.patient != patient) continue;
    const auto charge = each.charge ? amount_words(*each.charge) : said("no charge recorded");
    const auto words = each.takes_back() ? say("Claim {} taken back: {} of {}, {}", each.claim_ref,
                                               each.quantity, each.code, charge)
                                         : say("Billed by claim {}: {} of {}, {}", each.claim_ref,
                                               each.quantity, each.code, charge);
    history.push_back({Happening::claims, each.service_date, each.side, words, std::nullopt});
  }
}

std::optional<Date> day_paid(const Clinic& clinic, const RemittanceLine& line) {
  const auto paid = std::ranges::find_if(clinic.remittances, [&](const Remittance& each) {
    return each.reference == line.reference && each.payer == line.payer;
  });
  return paid == clinic.remittances.end() ? std::nullopt : std::optional{paid->paid_on};
}

void add_payments(History& history, const Day& day, const PatientRef& patient) {
  for (const RemittanceLine& each : day.clinic().remittance_lines) {
    if (each.patient != patient) continue;
    history.push_back(
        {Happening::claims, day_paid(day.clinic(), each), each.side,
         say("{} paid {} on claim {}, {}; charged {}", each.payer, amount_words(each.paid),
             each.claim_ref, each.code.empty() ? said("as a whole") : each.code,
             amount_words(each.charge)),
         std::nullopt});
  }
}

void add_papers(History& history, const Day& day, const PatientRef& patient) {
  for (const PartPaper& each : day.clinic().part_papers) {
    if (each.patient != patient) continue;
    auto words = say("Paper \"{}\" of {} issued {}", shown_paper(each.paper), each.item.text,
                     date_words(each.issued_on));
    if (!each.words.empty()) words += fmt::format(": {}", each.words);
    history.push_back({Happening::papers, each.dated_on, each.side, words, std::nullopt});
  }
  for (const Handover& each : day.clinic().handovers) {
    if (each.patient != patient) continue;
    if (each.printed_on) {
      history.push_back({Happening::papers, each.printed_on, each.side,
                         say("Delivery sheet written for {}", each.item.text), std::nullopt});
    }
    if (each.signed_on) {
      history.push_back({Happening::papers, each.signed_on, each.side,
                         say("Delivery sheet signed for {}", each.item.text), std::nullopt});
    }
    if (!each.overridden.empty()) {
      history.push_back({Happening::papers, each.issued_on, each.side,
                         say("{} handed {} over although: {} Because: {}", each.override_by,
                             each.item.text, each.overridden, each.override_because),
                         std::nullopt});
    }
  }
}

}  // namespace

void add_billing_history(History& history, const Day& day, const PatientRef& patient) {
  add_claims(history, day, patient);
  add_payments(history, day, patient);
  add_papers(history, day, patient);
}

}  // namespace sparewell::desk
