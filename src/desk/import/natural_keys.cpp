#include "desk/import/natural_keys.hpp"

#include <fmt/format.h>

namespace sparewell::desk {
namespace {

std::string date_key(Date date) {
  return std::to_string(date.time_since_epoch().count());
}

std::string date_key(const std::optional<Date>& date) {
  return date ? date_key(*date) : "";
}

}  // namespace

std::string joined_key(std::initializer_list<std::string_view> parts) {
  std::string key;
  for (const auto part : parts) {
    key += part;
    key += '\x1F';
  }
  return key;
}

std::string natural_key(const Supplier& supplier) {
  return supplier.name.text;
}

std::string natural_key(const Item& item) {
  return item.code.text;
}

std::string natural_key(const Patient& patient) {
  return patient.ref.text;
}

std::string natural_key(const Prosthesis& prosthesis) {
  return joined_key(
      {prosthesis.patient.text, word(prosthesis.side), date_key(prosthesis.delivered_on)});
}

std::string natural_key(const Usage& usage) {
  return joined_key({usage.patient.text, date_key(usage.from_date)});
}

std::string natural_key(const Sensitivity& sensitivity) {
  return joined_key(
      {sensitivity.patient.text, sensitivity.substance, date_key(sensitivity.noted_on)});
}

std::string natural_key(const Measurement& measurement) {
  return joined_key({measurement.patient.text, word(measurement.side),
                     date_key(measurement.measured_on), fmt::to_string(measurement.at_cm)});
}

std::string natural_key(const Reaction& reaction) {
  return joined_key({reaction.patient.text, reaction.side ? word(*reaction.side) : "",
                     date_key(reaction.began_on)});
}

std::string natural_key(const Unit& unit) {
  return joined_key({unit.patient.text, word(unit.side), unit.item.text, unit.lot, unit.serial,
                     date_key(unit.issued_on)});
}

std::string natural_key(const OrderLine& line) {
  return joined_key({line.supplier.text, line.order_ref, line.item.text});
}

std::string natural_key(const ClaimLine& line) {
  std::string modifiers;
  for (const auto& modifier : line.modifiers) modifiers += modifier + ';';
  return joined_key({line.claim_ref, line.patient.text, line.side ? word(*line.side) : "",
                     date_key(line.service_date), line.code, modifiers});
}

std::string natural_key(const InvoiceLine& line) {
  return joined_key({line.supplier.text, line.invoice_ref, line.order_ref, line.item.text});
}

std::string natural_key(const BillingCode& code) {
  return joined_key({code.list, code.code, date_key(code.valid_from)});
}

std::string natural_key(const PayerRule& rule) {
  return joined_key(
      {rule.payer, rule.code, word(rule.rule), rule.words, date_key(rule.valid_from)});
}

std::string natural_key(const PartPaper& paper) {
  return joined_key({paper.patient.text, word(paper.side), paper.item.text, paper.lot, paper.serial,
                     date_key(paper.issued_on), paper.paper, date_key(paper.dated_on)});
}

std::string stock_key(const Lot& lot, std::string_view place) {
  return joined_key({lot.item.text, lot.lot, date_key(lot.use_by), place});
}

}  // namespace sparewell::desk
