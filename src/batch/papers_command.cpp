#include <algorithm>
#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "batch/paper_options.hpp"
#include "batch/stock_command.hpp"
#include "desk/issue_check.hpp"
#include "desk/papers/parts_list.hpp"
#include "desk/visit_papers.hpp"
#include "desk/wording.hpp"

namespace sparewell::batch {
namespace {

struct Options {
  std::string patient;
  std::string on;
  std::string out;
  PaperOptions paper;
};

int list_parts(const Context& context, const Options& options) {
  const desk::Day day{context.forecast()};
  const auto pages =
      desk::print_parts_list(day, {options.patient}, options.paper.how(), options.out);
  if (!pages) throw WrongUse{pages.error().sentence};
  if (context.json) {
    print({{"patient_ref", options.patient}, {"file", options.out}, {"pages", *pages}});
  } else {
    std::cout << fmt::format("Written to {}.\n", options.out);
  }
  return done;
}

Json json_of(const desk::NearEnd& near, const desk::Day& day) {
  const auto& unit = day.clinic().units[near.units.front()];
  const auto* forecast = day.forecast(near.units.front());
  return {{"side", word(unit.side)},
          {"item_code", unit.item.text},
          {"lot", unit.lot},
          {"pieces", near.units.size()},
          {"p10", batch::json_of(forecast->p10)},
          {"p50", batch::json_of(forecast->p50)},
          {"p90", batch::json_of(forecast->p90)},
          {"order_by", batch::json_of(forecast->order_by)},
          {"use_by", forecast->use_by ? batch::json_of(forecast->use_by->day) : Json(nullptr)},
          {"words", near.words}};
}

Json json_of(const desk::BenchPieces& pieces) {
  Json taken = Json::array();
  for (const auto& level : pieces.take) taken.push_back(batch::json_of(level));
  return {{"item_code", pieces.item.text}, {"pieces", pieces.quantity},
          {"booked", pieces.booked},       {"from_shelf", std::move(taken)},
          {"missing", pieces.missing()},   {"stopped", !pieces.stopped.empty()},
          {"words", pieces.words}};
}

Json json_of(const desk::VisitSheet& sheet, const desk::Day& day) {
  Json near = Json::array();
  for (const auto& each : sheet.near_end) near.push_back(json_of(each, day));
  Json findings = Json::array();
  for (const auto& each : sheet.findings) {
    findings.push_back(
        {{"key", each.key}, {"gravity", desk::gravity_key(each.gravity)}, {"words", each.words}});
  }
  Json bench = Json::array();
  for (const auto& each : sheet.bench) bench.push_back(json_of(each));
  return {{"patient_ref", sheet.patient.text},
          {"reason", sheet.reason},
          {"near_end", std::move(near)},
          {"findings", std::move(findings)},
          {"bench", std::move(bench)}};
}

void tell(const Context& context, const desk::Day& day, const desk::VisitDay& visits,
          const std::string& out, int pages) {
  if (context.json) {
    Json sheets = Json::array();
    for (const auto& sheet : visits.sheets) sheets.push_back(json_of(sheet, day));
    print({{"on", batch::json_of(visits.on)},
           {"visits", std::move(sheets)},
           {"file", pages > 0 ? Json(out) : Json(nullptr)},
           {"pages", pages}});
  } else if (pages == 0) {
    std::cout << desk::no_visit_words(day, visits.on) << " No file was written." << '\n';
  } else {
    std::cout << fmt::format("{}: {} Written to {}.\n", desk::day_words(visits.on),
                             desk::visits_summary(visits), out);
  }
}

int prepare_visits(const Context& context, const Options& options) {
  auto assessment = context.forecast();
  auto surprises = wear::find_surprises(assessment.clinic, assessment.fitted, assessment.today);
  const desk::Day day{std::move(assessment), std::move(surprises)};
  const Date on = options.on.empty() ? day.today() + days{1} : date_option("--on", options.on);
  const auto visits = desk::visit_day(day, on);
  const auto pages =
      desk::print_visits(day, visits, {options.paper.size(), !options.paper.no_name}, options.out);
  if (!pages) throw WrongUse{pages.error().sentence};
  tell(context, day, visits, options.out, *pages);
  const bool calls = std::ranges::any_of(visits.sheets, [](const desk::VisitSheet& sheet) {
    return sheet.count(care::Gravity::stops) > 0 || sheet.missing() > 0;
  });
  return calls ? done_with_findings : done;
}

}  // namespace

void add_papers(Command& app, Context& context) {
  auto* parts = app.add_subcommand(
      "parts-list", "Write the list of a patient's parts with their care, for the patient");
  const auto listed = std::make_shared<Options>();
  parts->add_option("--patient", listed->patient, "The patient's reference")->required();
  parts->add_option("--out", listed->out, "The PDF file to write")->required();
  add_languages(*parts, listed->paper);
  add_paper(*parts, listed->paper);
  parts->callback([&context, listed] {
    context.run = [&context, listed] { return list_parts(context, *listed); };
  });
  auto* visits = app.add_subcommand(
      "visits",
      "Write a sheet for each patient expected on a day: what is near its end, what was "
      "found, what to have ready");
  const auto prepared = std::make_shared<Options>();
  visits->add_option("--on", prepared->on, "The day, YYYY-MM-DD (default: tomorrow)");
  visits->add_option("--out", prepared->out, "The PDF file to write")->required();
  add_paper(*visits, prepared->paper);
  visits->callback([&context, prepared] {
    context.run = [&context, prepared] { return prepare_visits(context, *prepared); };
  });
}

}  // namespace sparewell::batch
