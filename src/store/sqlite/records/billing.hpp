/// Columns of what is known, paid and decided in billing.
#pragma once

#include "clinic/clinic.hpp"
#include "clinic/say.hpp"
#include "store/sqlite/table.hpp"

namespace sparewell::store::sqlite {

template <>
struct Table<BillingCode> {
  static constexpr Subject subject{to_say("billing code"), to_say("list, code and first day")};
  static constexpr const char* name = "billing_codes";

  template <class Fields, class C>
  static void describe(Fields& f, C& code) {
    f("list", code.list);
    f("code", code.code);
    f("description", code.description);
    f("unit", code.unit);
    f("valid_from", code.valid_from);
    f("valid_to", code.valid_to);
    f("source", code.source);
  }
};

template <>
struct Table<PayerRule> {
  static constexpr Subject subject{to_say("payer's rule"),
                                   to_say("payer, code, rule, words and first day")};
  static constexpr const char* name = "payer_rules";

  template <class Fields, class R>
  static void describe(Fields& f, R& rule) {
    f("payer", rule.payer);
    f("code", rule.code);
    f("rule", rule.rule);
    f("number", rule.number);
    f("days", rule.days);
    f("amount", rule.amount);
    f("words", rule.words);
    f("valid_from", rule.valid_from);
    f("valid_to", rule.valid_to);
    f("source", rule.source);
  }
};

template <>
struct Table<Remittance> {
  static constexpr Subject subject{to_say("remittance"), to_say("payer and reference")};
  static constexpr const char* name = "remittances";

  template <class Fields, class R>
  static void describe(Fields& f, R& paid) {
    f("payer", paid.payer);
    f("reference", paid.reference);
    f("paid_on", paid.paid_on);
    f("total", paid.total);
    f("source", paid.source);
  }
};

template <>
struct Table<RemittanceLine> {
  static constexpr Subject subject{to_say("remittance line"),
                                   to_say("payer, reference and position")};
  static constexpr const char* name = "remittance_lines";

  template <class Fields, class L>
  static void describe(Fields& f, L& line) {
    f("payer", line.payer);
    f("reference", line.reference);
    f("position", line.position);
    f("entry", line.entry);
    f("claim_ref", line.claim_ref);
    f("payer_claim", line.payer_claim);
    f("status", line.status);
    f.reference_or_none("patient_id", line.patient);
    f("side", line.side);
    f("service_date", line.service_date);
    f("code", line.code);
    f("modifiers", line.modifiers);
    f("quantity", line.quantity);
    f("charge", line.charge);
    f("paid", line.paid);
    f("adjustments", line.adjustments);
    f("line_control", line.line_control);
  }
};

template <>
struct Table<PartPaper> {
  static constexpr Subject subject{
      to_say("paper of a part"),
      to_say(
          "patient, side, item, lot, serial number, day of issue, copy number, paper and its day")};
  static constexpr const char* name = "part_papers";

  template <class Fields, class P>
  static void describe(Fields& f, P& paper) {
    f.reference("patient_id", paper.patient);
    f("side", paper.side);
    f.reference("item_id", paper.item);
    f("lot", paper.lot);
    f("serial", paper.serial);
    f("issued_on", paper.issued_on);
    f("copy", paper.copy);
    f("paper", paper.paper);
    f("dated_on", paper.dated_on);
    f("words", paper.words);
    f("noted_by", paper.noted_by);
  }
};

template <>
struct Table<BillingAnswer> {
  static constexpr Subject subject{to_say("answer to a finding"), to_say("finding and number")};
  static constexpr const char* name = "billing_answers";

  template <class Fields, class A>
  static void describe(Fields& f, A& answer) {
    f("finding", answer.finding);
    f("number", answer.number);
    f("answer", answer.answer);
    f("reason", answer.reason);
    f("answered_by", answer.answered_by);
    f("answered_on", answer.answered_on);
    f("quantity", answer.quantity);
    f("money", answer.money);
    f("ask_again_on", answer.ask_again_on);
  }
};

template <>
struct Table<MonthClose> {
  static constexpr Subject subject{to_say("closing of a month"), to_say("month and number")};
  static constexpr const char* name = "month_closes";

  template <class Fields, class M>
  static void describe(Fields& f, M& close) {
    f("month", close.month);
    f("number", close.number);
    f("closed_on", close.closed_on);
    f("closed_by", close.closed_by);
    f("note", close.note);
  }
};

template <>
struct Table<ClosedEntry> {
  static constexpr Subject subject{to_say("entry of a closed month"),
                                   to_say("month, number, entry and key")};
  static constexpr const char* name = "closed_entries";

  template <class Fields, class E>
  static void describe(Fields& f, E& entry) {
    f("month", entry.month);
    f("number", entry.number);
    f("entry", entry.entry);
    f("key", entry.key);
    f("quantity", entry.quantity);
    f("amount", entry.amount);
  }
};

template <>
struct Table<ColumnMapping> {
  static constexpr Subject subject{to_say("column mapping"), to_say("name")};
  static constexpr const char* name = "column_mappings";

  template <class Fields, class M>
  static void describe(Fields& f, M& mapping) {
    f("name", mapping.name);
    f("target", mapping.target);
    f("columns", mapping.columns);
    f("date_pattern", mapping.date_pattern);
    f("decimal_sign", mapping.decimal_sign);
  }
};

}  // namespace sparewell::store::sqlite
