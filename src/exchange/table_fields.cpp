#include "clinic/say.hpp"
#include "exchange/mapped_table.hpp"

namespace sparewell::exchange {
namespace {

// Headings are words that people would use; none was taken from a program.
std::vector<TableField> of_both() {
  return {{"claim_ref",
           true,
           {"claim", said("claim no"), said("claim number"), said("claim id"), "invoice",
            said("invoice number"), said("patient control number"), "account"}},
          {"patient_ref",
           false,
           {"patient", said("patient no"), said("patient number"), said("patient id"), "chart"}},
          {"member_id",
           false,
           {"member", said("member no"), said("member number"), said("insured id"), "policy"}},
          {"given_name", false, {said("first name"), "forename", said("patient first name")}},
          {"family_name", false, {said("last name"), "surname", said("patient last name")}},
          {"birth_date", false, {said("date of birth"), "dob", "birthday", "born"}},
          {"side", false, {"side", "laterality", said("left or right")}},
          {"modifiers", false, {"modifier", "mod", "mods"}},
          {"quantity", false, {"qty", "units", "pieces", said("number of units")}},
          {"line_control",
           false,
           {said("line number"), said("line no"), said("line id"), said("line control number")}}};
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
  static const auto claims =
      with(of_both(),
           {{"service_date", true, service},
            {"code", true, code},
            {"charge",
             false,
             {"charges", "amount", "billed", said("billed amount"), said("total charge"), "fee"}},
            {"payer", false, payer},
            {"submission",
             false,
             {"frequency", said("frequency code"), said("claim type"), said("kind of claim")}},
            {"replaces", false, {said("original claim"), said("replaced claim"), "corrects"}}});
  static const auto remittance =
      with(of_both(),
           {{"payer", true, payer},
            {"reference",
             true,
             {"payment", said("payment no"), said("payment number"), said("check number"),
              said("trace number"), "transfer"}},
            {"paid_on",
             true,
             {said("payment date"), said("paid date"), said("date paid"), said("check date")}},
            {"paid", true, {said("paid amount"), said("amount paid"), said("payment amount")}},
            {"service_date", false, service},
            {"code", false, code},
            {"charge",
             false,
             {"charges", "billed", said("billed amount"), "submitted", said("total charge")}},
            {"status", false, {said("claim status"), said("status code")}},
            {"payer_claim",
             false,
             {said("payer claim number"), said("insurer claim"), said("claim control number")}},
            {"contractual", false, {said("contractual adjustment"), said("write off"), "discount"}},
            {"patient_share",
             false,
             {said("patient responsibility"), "deductible", "coinsurance", "copayment"}},
            {"adjustments", false, {"adjustment", said("reason codes"), "reasons"}}});
  return target == remittance_target ? remittance : claims;
}

}  // namespace sparewell::exchange
