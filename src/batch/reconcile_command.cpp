#include <algorithm>
#include <array>
#include <iostream>

#include <fmt/format.h>

#include "batch/billing_json.hpp"
#include "batch/context.hpp"
#include "desk/billing/answering.hpp"
#include "desk/billing/books.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/billing/pair_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string book;
  std::string kind;
  std::string patient;
  std::string supplier;
  bool all = false;
  bool pairs = false;
};

struct AnswerOptions {
  std::string finding;
  std::string answer;
  std::string reason;
  std::string by;
  std::string ask_again;
};

bool is_asked_for(const Options& options, const billing::WorkItem& item) {
  const auto& found = item.finding;
  return (options.book.empty() || desk::book_key(billing::book_of(found.kind)) == options.book) &&
         (options.kind.empty() || same_word(billing::finding_word(found.kind), options.kind)) &&
         (options.patient.empty() || found.patient.text == options.patient) &&
         (options.supplier.empty() || found.supplier.text == options.supplier) &&
         (options.all || item.state == billing::WorkState::open);
}

Json json_of(const billing::Stake& stake) {
  const auto list = [](const std::vector<Money>& sums) {
    Json made = Json::array();
    for (const auto& sum : sums) made.push_back(exact(sum));
    return made;
  };
  return {{"to_receive", list(stake.to_receive)},
          {"to_give", list(stake.to_give)},
          {"without_sum", stake.without_sum}};
}

Json json_of(const billing::BookTotals& totals) {
  return {{"currency", totals.currency.code},
          {"charged_minor", totals.charged},
          {"replaced_minor", totals.replaced},
          {"reversed_minor", totals.reversed},
          {"before_books_minor", totals.before_books},
          {"paired_minor", totals.paired},
          {"alone_minor", totals.alone}};
}

void check_kind(const std::string& kind) {
  if (kind.empty()) return;
  std::string allowed;
  for (int at = 0; at <= static_cast<int>(billing::FindingKind::warranty_due); ++at) {
    const auto each = billing::finding_word(static_cast<billing::FindingKind>(at));
    if (same_word(each, kind)) return;
    allowed += fmt::format("{}\"{}\"", allowed.empty() ? "" : ", ", each);
  }
  throw WrongUse{fmt::format("There is no finding \"{}\"; use one of: {}.", kind, allowed)};
}

void print_json(const Options& options, const Clinic& clinic, const desk::Books& books,
                const std::vector<billing::WorkItem>& shown, Date today) {
  Json findings = Json::array();
  for (const auto& item : shown) findings.push_back(batch::json_of(item, clinic));
  Json totals = Json::array();
  for (const auto& each : books.claims.totals) totals.push_back(json_of(each));
  Json document{{"today", batch::json_of(today)},
                {"findings", std::move(findings)},
                {"at_stake", json_of(billing::stake_of(shown))},
                {"claim_totals", std::move(totals)},
                {"pairs_count", books.claims.pairs.size()},
                {"leftovers_count", books.claims.leftovers.size()}};
  if (options.pairs) {
    document["pairs"] = Json::array();
    for (const auto& pair : books.claims.pairs) {
      document["pairs"].push_back(desk::pair_words(clinic, pair));
    }
    document["leftovers"] = Json::array();
    for (const auto& left : books.claims.leftovers) {
      document["leftovers"].push_back(desk::leftover_words(clinic, left));
    }
  }
  print(document);
}

void print_lines(const Options& options, const Clinic& clinic, const desk::Books& books,
                 const std::vector<billing::WorkItem>& shown) {
  for (const auto& item : shown) std::cout << lines_of(item, clinic) << "\n\n";
  if (options.pairs) {
    for (const auto& pair : books.claims.pairs) std::cout << desk::pair_words(clinic, pair) << '\n';
    for (const auto& left : books.claims.leftovers) {
      std::cout << desk::leftover_words(clinic, left) << '\n';
    }
  }
  const auto stake = billing::stake_of(shown);
  std::cout << fmt::format("{}.", desk::count_words(std::ssize(shown), "finding", "findings"));
  if (!stake.to_receive.empty()) {
    std::cout << fmt::format(" To receive: {}.", desk::amounts_words(stake.to_receive));
  }
  if (!stake.to_give.empty()) {
    std::cout << fmt::format(" To give back or charged too much: {}.",
                             desk::amounts_words(stake.to_give));
  }
  std::cout << '\n';
}

int reconcile(const Context& context, const Options& options) {
  check_kind(options.kind);
  const auto clinic = context.clinic_on(context.today());
  const auto books = desk::compare_books(clinic, context.today());
  std::vector<billing::WorkItem> shown;
  for (const auto& item : books.items) {
    if (is_asked_for(options, item)) shown.push_back(item);
  }
  if (context.json) {
    print_json(options, clinic, books, shown, context.today());
  } else {
    print_lines(options, clinic, books, shown);
  }
  const bool any_open = std::ranges::any_of(
      shown, [](const auto& item) { return item.state == billing::WorkState::open; });
  return any_open ? done_with_findings : done;
}

int answer(const Context& context, const AnswerOptions& options) {
  const auto clinic = context.clinic_on(context.today());
  const auto books = desk::compare_books(clinic, context.today());
  const auto item = std::ranges::find_if(
      books.items, [&](const auto& each) { return each.finding.key == options.finding; });
  if (item == books.items.end()) {
    throw WrongUse{fmt::format(
        "There is no finding with the key \"{}\" today; `reconcile --all` lists the keys.",
        options.finding)};
  }
  desk::AnswerRequest request;
  request.answer = *parse_word<Answer>(options.answer);
  request.reason = options.reason;
  request.by = options.by;
  if (!options.ask_again.empty()) {
    request.ask_again_on = date_option("--ask-again", options.ask_again);
  }
  const auto store = context.open(store::OpenMode::existing);
  const auto work = store->begin_write(context.author("a finding of billing was answered"));
  const auto made = desk::answer_finding(*work, item->finding, request, context.today());
  if (!made) throw WrongUse{made.error().sentence};
  work->commit();
  if (context.json) {
    print(batch::json_of(*made));
  } else {
    std::cout << desk::finding_sentence(item->finding) << '\n' << desk::answer_words(*made) << '\n';
  }
  return done;
}

}  // namespace

void add_reconcile(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "reconcile", "What does not agree between parts, claims, payments, orders and invoices");
  const auto options = std::make_shared<Options>();
  command->add_option("--book", options->book, "claims, payments or suppliers (default: all)")
      ->one_of({"claims", "payments", "suppliers"});
  command->add_option("--kind", options->kind, "One kind of finding, such as \"wrong side\"");
  command->add_option("--patient", options->patient, "Of one patient, by the reference");
  command->add_option("--supplier", options->supplier, "Of one supplier");
  command->add_flag("--all", options->all, "Also what waits for an answer or is settled");
  command->add_flag("--pairs", options->pairs,
                    "Also how parts and claims were paired, and what was left over");
  command->callback([&context, options] {
    context.run = [&context, options] { return reconcile(context, *options); };
  });

  auto* answers =
      app.add_subcommand("answer", "Record what was decided about a finding of billing");
  const auto given = std::make_shared<AnswerOptions>();
  answers->add_option("--finding", given->finding, "Its key, as `reconcile` prints it")->required();
  answers
      ->add_option("--as", given->answer,
                   "asked, accepted, corrected, \"written off\" or \"open again\"")
      ->required()
      ->one_of({"asked", "accepted", "corrected", "written off", "open again"});
  answers->add_option("--reason", given->reason, "Whom you asked, or why; it is kept")->required();
  answers->add_option("--by", given->by, "Who decides")->required();
  answers->add_option("--ask-again", given->ask_again,
                      "After \"asked\": the day to ask again (default: in two weeks)");
  answers->callback(
      [&context, given] { context.run = [&context, given] { return answer(context, *given); }; });
}

}  // namespace sparewell::batch
