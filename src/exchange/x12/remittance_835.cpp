#include "exchange/x12/remittance_835.hpp"

#include "clinic/say.hpp"
#include "exchange/text.hpp"
#include "exchange/x12/paid_claim.hpp"
#include "exchange/x12/segment_table.hpp"
#include "exchange/x12/values.hpp"

namespace sparewell::exchange {
namespace {

class PaymentReader {
 public:
  PaymentReader(X12Reading& reading, PaymentRead& into, const Currency& currency)
      : reading_{reading}, into_{into}, currency_{currency} {}

  void read(const X12Transaction& transaction) {
    into_.at = transaction.segment;
    into_.summed.currency = currency_;
    into_.remittance.total.currency = currency_;
    segments().read(*this, transaction, reading_);
    end_claim();
    finish();
  }

 private:
  /// Those that are passed over hold nothing of what is kept (from memory of the implementation
  /// guide).
  static const SegmentTable<PaymentReader>& segments() {
    static const SegmentTable<PaymentReader> table{
        {{"BPR", &PaymentReader::payment},
         {"TRN", &PaymentReader::trace},
         {"CUR", &PaymentReader::currency},
         {"N1", &PaymentReader::party},
         {"DTM", &PaymentReader::date},
         {"REF", &PaymentReader::number},
         {"CLP", &PaymentReader::claim},
         {"NM1", &PaymentReader::name},
         {"CAS", &PaymentReader::adjust},
         {"SVC", &PaymentReader::service},
         {"PLB", &PaymentReader::provider}},
        {"AMT", "LQ", "LX", "MIA", "MOA", "N2", "N3", "N4", "PER", "QTY", "RDM", "TS2", "TS3"},
        to_say("is no segment of a remittance")};
    return table;
  }

  Reason payment(const X12Segment& bpr) {
    if (const auto day = x12_date(bpr.at(16))) day_ = day;
    const auto total = x12_amount(bpr.at(2), currency_);
    if (!total) return said("does not state the payment's total as an amount");
    into_.remittance.total = *total;
    total_stated_ = true;
    return bpr.at(16).empty() || day_ ? "" : said("holds no date written CCYYMMDD");
  }

  Reason trace(const X12Segment& trn) {
    if (into_.remittance.reference.empty()) into_.remittance.reference = trn.at(2);
    return is_plain(trn.at(2)) ? "" : said("holds no reference that can be kept");
  }

  Reason currency(const X12Segment& cur) {
    return x12_currency(cur) == currency_ ? "" : said("names no currency, or not that of the file");
  }

  Reason party(const X12Segment& n1) {
    if (n1.at(1) == "PR") into_.remittance.payer = n1.at(2).empty() ? n1.at(4) : n1.at(2);
    return "";
  }

  /// 405 is the day on which the file was made, 472 that of a service, 150 and 232 the first of
  /// several (from memory); others are passed over.
  Reason date(const X12Segment& dtm) {
    const auto& what = dtm.at(1);
    const bool of_service = what == "472" || what == "150" || what == "232";
    if (!of_service && what != "405") return "";
    const auto day = x12_date(dtm.at(2));
    if (!day) return said("holds no date written CCYYMMDD");
    if (what == "405") {
      if (!day_) day_ = day;
    } else if (!claim_) {
      return said("stands outside a claim");
    } else if (in_line()) {
      claim_->lines.back().row.line.service_date = day;
    } else {
      claim_->whole.row.line.service_date = day;
    }
    return "";
  }

  Reason number(const X12Segment& ref) {
    if (ref.at(1) != "6R") return "";
    if (!claim_ || !in_line()) return said("stands outside a line of a claim");
    if (!is_plain(ref.at(2))) return said("holds no number that can be kept");
    claim_->lines.back().row.line.line_control = ref.at(2);
    return "";
  }

  Reason claim(const X12Segment& clp) {
    end_claim();
    auto& whole = claim_.emplace().whole;
    whole.row.at = clp.number;
    auto& line = whole.row.line;
    line.entry = RemittanceEntry::claim;
    line.claim_ref = plain(clp.at(1));
    line.status = plain(clp.at(2));
    line.payer_claim = plain(clp.at(7));
    const auto charge = x12_amount(clp.at(3), currency_);
    const auto paid = x12_amount(clp.at(4), currency_);
    line.charge = charge.value_or(Money{0, currency_});
    line.paid = paid.value_or(Money{0, currency_});
    return charge && paid ? "" : said("does not state charge and payment as amounts");
  }

  Reason name(const X12Segment& nm1) {
    if (!claim_) return said("stands outside a claim");
    auto& person = claim_->whole.row.person;
    if (nm1.at(1) == "QC") {
      const auto member = std::exchange(person, x12_person(nm1)).member_id;
      if (person.member_id.empty()) person.member_id = member;
    } else if (nm1.at(1) == "IL" && person.member_id.empty()) {
      person.member_id = nm1.at(9);
    }
    return "";
  }

  /// A group and up to six times reason, amount, quantity.
  Reason adjust(const X12Segment& cas) {
    if (!claim_) return said("stands outside a claim");
    constexpr std::size_t size = 3;
    auto& entry = in_line() ? claim_->lines.back() : claim_->whole;
    Reason reason;
    for (std::size_t i = 2; i < cas.elements.size(); i += size) {
      if (cas.at(i).empty() && cas.at(i + 1).empty()) continue;
      const auto amount = x12_amount(cas.at(i + 1), currency_);
      if (!amount || !is_code(cas.at(1)) || !is_code(cas.at(i))) {
        reason = said("holds an adjustment without group, reason and amount");
        continue;
      }
      if (!cas.at(i + 2).empty() && !x12_whole(cas.at(i + 2))) {
        reading_.note(cas, say("the quantity {} of an adjustment is not whole and was left out",
                               excerpt(cas.at(i + 2))));
      }
      entry.adjustments.push_back({cas.at(1), cas.at(i), *amount, x12_whole(cas.at(i + 2))});
    }
    return reason;
  }

  Reason service(const X12Segment& svc) {
    if (!claim_) return said("stands outside a claim");
    const auto charge = x12_amount(svc.at(2), currency_);
    const auto paid = x12_amount(svc.at(3).empty() ? "0" : svc.at(3), currency_);
    // What follows belongs to the line that is not there, or it would fall to the one before.
    auto& made = claim_->lines.emplace_back();
    made.row.at = svc.number;
    auto& line = made.row.line;
    line.entry = RemittanceEntry::line;
    line.charge = charge.value_or(Money{0, currency_});
    line.paid = paid.value_or(Money{0, currency_});
    const auto adjudicated = x12_procedure(svc, 1);
    const auto billed = svc.at(6).empty() ? adjudicated : x12_procedure(svc, 6);
    line.code = plain(billed.code);
    for (const auto& modifier : billed.modifiers) {
      if (is_code(modifier)) line.modifiers.push_back(modifier);
    }
    line.side = billed.side();
    line.quantity = x12_whole(svc.at(5));
    if (!svc.at(5).empty() && !line.quantity) {
      reading_.note(svc, say("the quantity {} is not whole and was left out", excerpt(svc.at(5))));
    }
    if (billed.code != adjudicated.code) {
      reading_.note(svc, say("{} was billed and paid as {}", excerpt(billed.code),
                             excerpt(adjudicated.code)));
    }
    if (billed.qualifier != "HC") {
      reading_.note(svc, say("the code {} is of the list '{}', not 'HC'", excerpt(billed.code),
                             excerpt(billed.qualifier)));
    }
    return charge && paid ? "" : said("does not state charge and payment as amounts");
  }

  /// What the payer keeps for itself or adds, up to six times reason and amount; what is above zero
  /// is taken off the payment.
  Reason provider(const X12Segment& plb) {
    end_claim();
    Reason reason;
    for (std::size_t i = 3; i < plb.elements.size(); i += 2) {
      if (plb.at(i).empty() && plb.at(i + 1).empty()) continue;
      const auto amount = x12_amount(plb.at(i + 1), currency_);
      const auto why = plb.part(i, 1);
      if (!amount || !is_code(why)) {
        reason = said("holds an adjustment without reason and amount");
        continue;
      }
      PaidEntry entry;
      entry.row.at = plb.number;
      entry.row.line.entry = RemittanceEntry::provider;
      entry.row.line.payer_claim = plain(plb.part(i, 2));
      entry.row.line.charge = {0, currency_};
      entry.row.line.paid = {-amount->minor, currency_};
      entry.adjustments.push_back({"PLB", why, *amount, {}});
      keep(entry.balanced());
    }
    return reason;
  }

  void end_claim() {
    if (!claim_) return;
    for (auto& line : claim_->lines) {
      auto& to = line.row.line;
      const auto& from = claim_->whole.row.line;
      to.claim_ref = from.claim_ref;
      to.payer_claim = from.payer_claim;
      to.status = from.status;
      if (!to.service_date) to.service_date = from.service_date;
      line.row.person = claim_->whole.row.person;
    }
    for (auto& row : claim_->entries(reading_.differences)) keep(std::move(row));
    claim_.reset();
  }

  void keep(PaidRow row) {
    row.line.position = static_cast<int>(into_.lines.size()) + 1;
    into_.summed.minor += row.line.paid.minor;
    into_.lines.push_back(std::move(row));
  }

  void finish() {
    auto& remittance = into_.remittance;
    if (!is_plain(remittance.payer) || !is_plain(remittance.reference)) {
      into_.fault = said("the payer or the payment's reference cannot be kept as text");
    } else if (remittance.payer.empty()) {
      into_.fault = said("names no payer (N1*PR)");
    } else if (remittance.reference.empty()) {
      into_.fault = said("has no reference (TRN02)");
    } else if (!day_) {
      into_.fault = said("has no day of payment (BPR16)");
    }
    if (day_) remittance.paid_on = *day_;
    if (!total_stated_) {
      remittance.total = into_.summed;
      reading_.differences.push_back(
          say("Segment {}: the payment states no total; its lines pay {}.", into_.at,
              plain_text(into_.summed)));
    } else if (remittance.total.minor != into_.summed.minor) {
      reading_.differences.push_back(say(
          "Segment {}: the payment {} states {}, but its lines pay {}.", into_.at,
          excerpt(remittance.reference), plain_text(remittance.total), plain_text(into_.summed)));
    }
    for (auto& row : into_.lines) {
      row.line.payer = remittance.payer;
      row.line.reference = remittance.reference;
    }
  }

  [[nodiscard]] bool in_line() const { return !claim_->lines.empty(); }
  /// A group or reason as the store keeps it: its parts are joined by ':'.
  static bool is_code(const std::string& text) {
    constexpr std::size_t most = 10;
    return !text.empty() && text.size() <= most && is_plain(text) &&
           text.find_first_of(":;") == std::string::npos;
  }
  static std::string plain(const std::string& text) {
    return is_plain(text) ? text : std::string{};
  }

  X12Reading& reading_;
  PaymentRead& into_;
  Currency currency_;
  std::optional<Date> day_;
  bool total_stated_ = false;
  std::optional<PaidClaim> claim_;
};

}  // namespace

std::vector<PaymentRead> read_payments_835(X12File& file, const Currency& otherwise) {
  const auto currency = x12_currency_of(file, otherwise);
  std::vector<PaymentRead> made;
  for_each_transaction(file, "835", [&](const X12Transaction& transaction) {
    PaymentReader{file.reading, made.emplace_back(), currency}.read(transaction);
  });
  return made;
}

}  // namespace sparewell::exchange
