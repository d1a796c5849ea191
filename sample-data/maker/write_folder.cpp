#include "write_folder.hpp"

#include <algorithm>

#include <fmt/format.h>
#include <fmt/ranges.h>

#include "csv_table.hpp"

namespace sparewell::sample {
namespace {

using std::filesystem::path;

template <class Enum>
std::optional<std::string_view> word_or_empty(const std::optional<Enum>& value) {
  if (!value) return std::nullopt;
  return word(*value);
}

std::string break_text(const Item& item) {
  std::vector<std::string> parts;
  for (const auto& price_break : item.price_breaks) {
    parts.push_back(
        fmt::format("{}:{}", price_break.from_quantity, plain_text(price_break.unit_cost)));
  }
  return fmt::format("{}", fmt::join(parts, ";"));
}

void write_catalogue(const Clinic& clinic, const path& file) {
  CsvTable table{
      "item_code,description,kind,attachment,material,size_label,size_min_cm,size_max_cm,"
      "size_at_cm,constituents,billing_code,supplier,supplier_item,unit_cost,currency,pack_size,"
      "min_order,price_breaks,lead_days,shelf_life_days,thread,gtin,stocked,warranty_days"};
  for (const Item& item : clinic.items) {
    table.cell(item.code.text).cell(item.description).cell(word(item.kind));
    table.cell(word(item.attachment)).cell(word(item.material)).cell(item.size_label);
    table.cell(item.size_min_cm).cell(item.size_max_cm).cell(item.size_at_cm);
    table.cell(fmt::format("{}", fmt::join(item.constituents, ";"))).cell(item.billing_code);
    table.cell(item.supplier.text).cell(item.supplier_item).cell(item.unit_cost);
    table.cell(item.currency.code).cell(item.pack_size).cell(item.min_order);
    table.cell(break_text(item)).cell(item.lead_days).cell(item.shelf_life_days);
    table.cell(item.thread).cell(item.gtin).cell(item.stocked ? "yes" : "no");
    table.cell(item.warranty_days).end_row();
  }
  table.write(file);
}

void write_suppliers(const Clinic& clinic, const path& file) {
  CsvTable table{"supplier,order_days,freight,free_freight_from,currency,email,account"};
  for (const Supplier& supplier : clinic.suppliers) {
    table.cell(supplier.name.text).cell(order_days_text(supplier.order_days));
    table.cell(supplier.freight).cell(supplier.free_freight_from).cell(supplier.currency.code);
    table.cell(supplier.email).cell(supplier.account).end_row();
  }
  table.write(file);
}

void write_patients(const Clinic& clinic, const path& file) {
  const bool branches = std::ranges::any_of(
      clinic.patients, [](const Patient& patient) { return !patient.place.empty(); });
  std::string header = "patient_ref,given_name,family_name,birth_date,next_visit,payer,member_id";
  if (branches) header += ",place";
  CsvTable table{header};
  for (const Patient& patient : clinic.patients) {
    table.cell(patient.ref.text).cell(patient.given_name).cell(patient.family_name);
    table.cell(patient.birth_date).cell(patient.next_visit).cell(patient.payer);
    table.cell(patient.member_id);
    if (branches) table.cell(patient.place);
    table.end_row();
  }
  table.write(file);
}

void write_prostheses(const Clinic& clinic, const path& file) {
  CsvTable table{"patient_ref,side,level,suspension,stage,delivered_on,ended_on"};
  for (const Prosthesis& prosthesis : clinic.prostheses) {
    table.cell(prosthesis.patient.text).cell(word(prosthesis.side)).cell(word(prosthesis.level));
    table.cell(word(prosthesis.suspension)).cell(word(prosthesis.stage));
    table.cell(prosthesis.delivered_on).cell(prosthesis.ended_on).end_row();
  }
  table.write(file);
}

void write_usage(const Clinic& clinic, const path& file) {
  CsvTable table{"patient_ref,from_date,activity,kneeling_hours,wear_hours,sweating,impact_sport"};
  for (const Usage& usage : clinic.usage) {
    table.cell(usage.patient.text).cell(usage.from_date).cell(word_or_empty(usage.activity));
    table.cell(usage.kneeling_hours).cell(usage.wear_hours).cell(word_or_empty(usage.sweating));
    std::string_view sport;
    if (usage.impact_sport) sport = *usage.impact_sport ? "yes" : "no";
    table.cell(sport).end_row();
  }
  table.write(file);
}

void write_sensitivities(const Clinic& clinic, const path& file) {
  CsvTable table{"patient_ref,substance,reaction,established_by,noted_on"};
  for (const Sensitivity& sensitivity : clinic.sensitivities) {
    table.cell(sensitivity.patient.text).cell(sensitivity.substance).cell(sensitivity.reaction);
    table.cell(sensitivity.established_by).cell(sensitivity.noted_on).end_row();
  }
  table.write(file);
}

void write_measurements(const Clinic& clinic, const path& file) {
  CsvTable table{"patient_ref,side,measured_on,at_cm,circumference_cm"};
  for (const Measurement& measurement : clinic.measurements) {
    table.cell(measurement.patient.text).cell(word(measurement.side));
    table.cell(measurement.measured_on).cell(measurement.at_cm);
    table.cell(measurement.circumference_cm).end_row();
  }
  table.write(file);
}

void write_reactions(const Clinic& clinic, const path& file) {
  CsvTable table{"patient_ref,side,began_on,ended_on,signs,note"};
  for (const Reaction& reaction : clinic.reactions) {
    table.cell(reaction.patient.text).cell(word_or_empty(reaction.side));
    table.cell(reaction.began_on).cell(reaction.ended_on);
    table.cell(fmt::format("{}", fmt::join(reaction.signs, ";"))).cell(reaction.note).end_row();
  }
  table.write(file);
}

void write_issued(const Clinic& clinic, const path& file) {
  CsvTable table{"patient_ref,side,item_code,lot,serial,issued_on,ended_on,end_reason,share"};
  for (const Unit& unit : clinic.units) {
    table.cell(unit.patient.text).cell(word(unit.side)).cell(unit.item.text).cell(unit.lot);
    table.cell(unit.serial).cell(unit.issued_on).cell(unit.ended_on);
    table.cell(word_or_empty(unit.end_reason)).cell(unit.share).end_row();
  }
  table.write(file);
}

void write_stock(const Clinic& clinic, const path& file) {
  CsvTable table{"item_code,lot,use_by,quantity,place"};
  for (const StockLevel& level : clinic.shelf) {
    table.cell(level.lot.item.text).cell(level.lot.lot).cell(level.lot.use_by);
    table.cell(level.quantity).cell(level.place).end_row();
  }
  table.write(file);
}

void write_orders(const Clinic& clinic, const path& file) {
  CsvTable table{
      "supplier,order_ref,item_code,ordered_on,quantity,unit_cost,received_on,received_quantity"};
  for (const OrderLine& line : clinic.order_lines) {
    table.cell(line.supplier.text).cell(line.order_ref).cell(line.item.text);
    table.cell(line.ordered_on).cell(line.quantity).cell(line.unit_cost);
    table.cell(line.received_on).cell(line.received_quantity).end_row();
  }
  table.write(file);
}

void write_claims(const Clinic& clinic, const path& file) {
  CsvTable table{"claim_ref,patient_ref,side,service_date,code,modifiers,quantity,charge,payer"};
  for (const ClaimLine& line : clinic.claim_lines) {
    table.cell(line.claim_ref).cell(line.patient.text).cell(word_or_empty(line.side));
    table.cell(line.service_date).cell(line.code);
    table.cell(fmt::format("{}", fmt::join(line.modifiers, ";"))).cell(line.quantity);
    table.cell(line.charge).cell(line.payer).end_row();
  }
  table.write(file);
}

void write_invoices(const Clinic& clinic, const path& file) {
  CsvTable table{"supplier,invoice_ref,order_ref,item_code,quantity,unit_cost,invoiced_on,freight"};
  for (const InvoiceLine& line : clinic.invoice_lines) {
    table.cell(line.supplier.text).cell(line.invoice_ref).cell(line.order_ref);
    table.cell(line.item.text).cell(line.quantity).cell(line.unit_cost);
    table.cell(line.invoiced_on).cell(line.freight).end_row();
  }
  table.write(file);
}

void write_payer_rules(const Clinic& clinic, const path& file) {
  CsvTable table{"payer,code,rule,number,days,amount,words,source"};
  for (const PayerRule& rule : clinic.payer_rules) {
    table.cell(rule.payer).cell(rule.code).cell(word(rule.rule)).cell(rule.number).cell(rule.days);
    table.cell(rule.amount).cell(rule.words).cell(rule.source).end_row();
  }
  table.write(file);
}

}  // namespace

void write_folder(const Clinic& clinic, const path& folder) {
  std::filesystem::create_directories(folder);
  write_catalogue(clinic, folder / "catalogue.csv");
  write_suppliers(clinic, folder / "suppliers.csv");
  write_patients(clinic, folder / "patients.csv");
  write_prostheses(clinic, folder / "prostheses.csv");
  write_usage(clinic, folder / "usage.csv");
  write_sensitivities(clinic, folder / "sensitivities.csv");
  write_measurements(clinic, folder / "measurements.csv");
  write_reactions(clinic, folder / "reactions.csv");
  write_issued(clinic, folder / "issued.csv");
  write_stock(clinic, folder / "stock.csv");
  write_orders(clinic, folder / "orders.csv");
  write_claims(clinic, folder / "claims.csv");
  write_invoices(clinic, folder / "invoices.csv");
  write_payer_rules(clinic, folder / "payer_rules.csv");
}

void write_planted(const std::vector<Planted>& planted, const path& file) {
  CsvTable table{"what,file,reference,detail"};
  for (const Planted& one : planted) {
    table.cell(one.what).cell(one.file).cell(one.reference).cell(one.detail).end_row();
  }
  table.write(file);
}

}  // namespace sparewell::sample
