#include "exchange/x12/claims_837.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "exchange/text.hpp"
#include "exchange/x12/segment_table.hpp"
#include "exchange/x12/values.hpp"

namespace sparewell::exchange {
namespace {

/// The words of claims.csv for a claim frequency code; another code stays as it is and is refused
/// with its line.
std::string submission_cell(const std::string& frequency) {
  if (frequency.empty() || frequency == "1") return std::string{word(Submission::original)};
  if (frequency == "7") return std::string{word(Submission::replacement)};
  if (frequency == "8") return std::string{word(Submission::reversal)};
  return frequency;
}

class ClaimReader {
 public:
  ClaimReader(X12Reading& reading, ClaimsRead& into, const Currency& currency)
      : reading_{reading}, into_{into}, currency_{currency} {}

  void read(const X12Transaction& transaction) {
    segments().read(*this, transaction, reading_);
    end_claim();
  }

 private:
  struct Claim {
    int segment = 0;
    std::string ref;
    std::string submission;
    std::string replaces;
    std::string service_date;
    std::optional<Money> stated;
    std::int64_t summed = 0;
    bool all_summed = true;
    bool other_payers = false;  ///< what follows concerns them, up to the first line
    bool in_line = false;

    [[nodiscard]] int sign() const { return submission == word(Submission::reversal) ? -1 : 1; }
  };

  /// Those that are passed over hold nothing of what is kept (from memory of the implementation
  /// guide).
  static const SegmentTable<ClaimReader>& segments() {
    static const SegmentTable<ClaimReader> table{
        {{"CLM", &ClaimReader::claim},
         {"CUR", &ClaimReader::currency},
         {"DMG", &ClaimReader::birth},
         {"DTP", &ClaimReader::date},
         {"HL", &ClaimReader::level},
         {"NM1", &ClaimReader::name},
         {"REF", &ClaimReader::number},
         {"SBR", &ClaimReader::subscriber},
         {"SV1", &ClaimReader::service}},
        {"AMT", "BHT", "CAS", "CN1", "CR1", "CR2", "CR3", "CRC", "CTP", "FRM", "HCP",
         "HI",  "K3",  "LIN", "LQ",  "LX",  "MEA", "MIA", "MOA", "N2",  "N3",  "N4",
         "NTE", "OI",  "PAT", "PER", "PRV", "PS1", "PWK", "QTY", "SV5", "SVD", "TOO"},
        to_say("is no segment of a professional claim")};
    return table;
  }

  Reason level(const X12Segment& hl) {
    end_claim();
    if (hl.at(3) != "23") {
      subscriber_ = {};
      payer_.clear();
    }
    patient_.reset();
    named_ = nullptr;
    return hl.at(3) == "20" || hl.at(3) == "22" || hl.at(3) == "23"
               ? ""
               : said("names a level that is neither provider, subscriber nor patient");
  }

  Reason currency(const X12Segment& cur) {
    return x12_currency(cur) == currency_ ? "" : said("names no currency, or not that of the file");
  }

  /// Of a claim's own loops only those before the claim matter: within it stand other payers.
  Reason name(const X12Segment& nm1) {
    if (claim_) return "";
    named_ = nullptr;
    if (nm1.at(1) == "IL") {
      subscriber_ = x12_person(nm1);
      named_ = &subscriber_;
    } else if (nm1.at(1) == "QC") {
      named_ = &patient_.emplace(x12_person(nm1));
    } else if (nm1.at(1) == "PR") {
      payer_ = nm1.at(3);
    }
    return "";
  }

  Reason birth(const X12Segment& dmg) {
    if (claim_ || named_ == nullptr || dmg.at(2).empty()) return "";
    named_->birth_date = x12_date(dmg.at(2));
    return named_->birth_date ? "" : said("holds no date written CCYYMMDD");
  }

  Reason subscriber(const X12Segment&) {
    if (claim_) claim_->other_payers = true;
    return "";
  }

  Reason claim(const X12Segment& clm) {
    end_claim();
    auto& made = claim_.emplace();
    made.segment = clm.number;
    made.ref = clm.at(1);
    made.submission = submission_cell(clm.part(5, 3));
    made.stated = x12_amount(clm.at(2), currency_);
    return made.stated ? "" : said("does not state the claim's total as an amount");
  }

  Reason number(const X12Segment& ref) {
    if (ref.at(1) == "6R") {
      if (!claim_ || !claim_->in_line) return said("stands outside a line of a claim");
      row().cells["line_control"] = ref.at(2);
    } else if (ref.at(1) == "F8" && claim_ && !claim_->other_payers && !claim_->in_line) {
      claim_->replaces = ref.at(2);
    }
    return "";
  }

  Reason date(const X12Segment& dtp) {
    if (dtp.at(1) != "472") return "";
    if (!claim_) return said("stands outside a claim");
    const bool range = dtp.at(2) == "RD8";
    if (!range && dtp.at(2) != "D8") return said("has a date that is neither D8 nor RD8");
    const auto day = x12_date(dtp.at(3));
    const auto cell = day ? iso_text(*day) : dtp.at(3);
    (claim_->in_line ? row().cells["service_date"] : claim_->service_date) = cell;
    if (range) reading_.note(dtp, said("of the range of days the first is taken"));
    return "";
  }

  Reason service(const X12Segment& sv1) {
    if (!claim_) return said("stands outside a claim");
    claim_->in_line = true;
    const auto procedure = x12_procedure(sv1, 1);
    auto& made = into_.rows.emplace_back();
    made.at = sv1.number;
    made.person = patient_ ? *patient_ : subscriber_;
    // A patient of their own level may be insured under the subscriber's number.
    if (made.person.member_id.empty()) made.person.member_id = subscriber_.member_id;
    const auto side = procedure.side();
    made.cells = {{"claim_ref", claim_->ref},
                  {"side", side ? std::string{word(*side)} : std::string{}},
                  {"service_date", claim_->service_date},
                  {"code", procedure.code},
                  {"modifiers", fmt::format("{}", fmt::join(procedure.modifiers, ";"))},
                  {"quantity", sv1.at(4)},
                  {"charge", charge_cell(sv1.at(2))},
                  {"payer", payer_},
                  {"submission", claim_->submission},
                  {"replaces", claim_->replaces}};
    if (procedure.qualifier != "HC") {
      reading_.note(sv1, say("the code {} is of the list '{}', not 'HC'", excerpt(procedure.code),
                             excerpt(procedure.qualifier)));
    }
    if (sv1.at(3) != "UN") {
      reading_.note(sv1, say("the quantity counts '{}', not units", excerpt(sv1.at(3))));
    }
    return "";
  }

  std::string charge_cell(const std::string& text) {
    const auto charge = x12_amount(text, currency_);
    if (!charge) {
      claim_->all_summed = false;
      return text;
    }
    claim_->summed += charge->minor;
    return plain_text({claim_->sign() * charge->minor, currency_});
  }

  void end_claim() {
    if (!claim_) return;
    ++into_.claims;
    const auto sign = claim_->sign();
    into_.summed.minor += sign * claim_->summed;
    if (claim_->stated) {
      into_.stated.minor += sign * claim_->stated->minor;
      if (claim_->stated->minor != claim_->summed) {
        note_difference(*claim_);
      }
    }
    claim_.reset();
  }

  void note_difference(const Claim& claim) {
    const auto ref = excerpt(claim.ref);
    const auto stated = plain_text(*claim.stated);
    const auto summed = plain_text({claim.summed, currency_});
    reading_.differences.push_back(
        claim.all_summed
            ? say("Segment {}: the claim {} states {}, but its lines add up to {}.", claim.segment,
                  ref, stated, summed)
            : say("Segment {}: the claim {} states {}, but its lines add up to {} without those "
                  "that cannot be read.",
                  claim.segment, ref, stated, summed));
  }

  [[nodiscard]] ClaimRow& row() { return into_.rows.back(); }

  X12Reading& reading_;
  ClaimsRead& into_;
  Currency currency_;
  PersonClue subscriber_;
  std::optional<PersonClue> patient_;
  PersonClue* named_ = nullptr;
  std::string payer_;
  std::optional<Claim> claim_;
};

}  // namespace

ClaimsRead read_claims_837(X12File& file, const Currency& otherwise) {
  const auto currency = x12_currency_of(file, otherwise);
  ClaimsRead made;
  made.stated.currency = currency;
  made.summed.currency = currency;
  for_each_transaction(file, "837", [&](const X12Transaction& transaction) {
    ClaimReader{file.reading, made, currency}.read(transaction);
  });
  return made;
}

}  // namespace sparewell::exchange
