#include "exchange/mapped_table.hpp"

namespace sparewell::exchange {
namespace {

// Headings are words that people would use; none was taken from a program.
std::vector<TableField> of_both() {
  return {
      {"claim_ref",
       true,
       {"claim", "claim no", "claim number", "claim id", "invoice", "invoice number",
        "patient control number", "account"}},
      {"patient_ref", false, {"patient", "patient no", "patient number", "patient id", "chart"}},
      {"member_id", false, {"member", "member no", "member number", "insured id", "policy"}},
      {"given_name", false, {"first name", "forename", "patient first name"}},
      {"family_name", false, {"last name", "surname", "patient last name"}},
      {"birth_date", false, {"date of birth", "dob", "birthday", "born"}},
      {"side", false, {"side", "laterality", "left or right"}},
      {"modifiers", false, {"modifier", "mod", "mods"}},
      {"quantity", false, {"qty", "units", "pieces", "number of units"}},
      {"line_control", false, {"line number", "line no", "line id", "line control number"}}};
}

std::vector<TableField> with(std::vector<TableField> fields, std::vector<TableField> more) {
  fields.insert(fields.end(), more.begin(), more.end());
  return fields;
}

}  // namespace

const std::vector<TableField>& table_fields(std::string_view target) {
  static const auto service =
      std::vector<std::string_view>{"service day", "date of service", "dos", "from date", "date"};
  static const auto code =
      std::vector<std::string_view>{"procedure", "procedure code", "hcpcs", "billing code"};
  static const auto payer =
      std::vector<std::string_view>{"insurance", "insurer", "fund", "payer name"};
  static const auto claims = with(
      of_both(),
      {{"service_date", true, service},
       {"code", true, code},
       {"charge", false, {"charges", "amount", "billed", "billed amount", "total charge", "fee"}},
       {"payer", false, payer},
       {"submission", false, {"frequency", "frequency code", "claim type", "kind of claim"}},
       {"replaces", false, {"original claim", "replaced claim", "corrects"}}});
  static const auto remittance = with(
      of_both(),
      {{"payer", true, payer},
       {"reference",
        true,
        {"payment", "payment no", "payment number", "check number", "trace number", "transfer"}},
       {"paid_on", true, {"payment date", "paid date", "date paid", "check date"}},
       {"paid", true, {"paid amount", "amount paid", "payment amount"}},
       {"service_date", false, service},
       {"code", false, code},
       {"charge", false, {"charges", "billed", "billed amount", "submitted", "total charge"}},
       {"status", false, {"claim status", "status code"}},
       {"payer_claim", false, {"payer claim number", "insurer claim", "claim control number"}},
       {"contractual", false, {"contractual adjustment", "write off", "discount"}},
       {"patient_share",
        false,
        {"patient responsibility", "deductible", "coinsurance", "copayment"}},
       {"adjustments", false, {"adjustment", "reason codes", "reasons"}}});
  return target == remittance_target ? remittance : claims;
}

}  // namespace sparewell::exchange
