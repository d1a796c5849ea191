#include "desk/visit_papers.hpp"

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/patient_card.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

using exchange::VisitLine;
using exchange::VisitSection;

const std::vector<double> shares{0.17, 0.27, 0.14, 0.24, 0.18};

std::string title_of(const VisitSheet& sheet, bool name) {
  return name && !sheet.name.empty() ? fmt::format("{}   {}", sheet.patient.text, sheet.name)
                                     : sheet.patient.text;
}

/// "1 to act on, 2 to look at"; "none" when there are none.
std::string counted_findings(const VisitSheet& sheet) {
  std::vector<std::string> parts;
  if (const int count = sheet.count(care::Gravity::stops); count > 0) {
    parts.push_back(say("{} to act on", count));
  }
  if (const int count = sheet.count(care::Gravity::ask); count > 0) {
    parts.push_back(say("{} to look at", count));
  }
  if (const int count = sheet.count(care::Gravity::note); count > 0) {
    parts.push_back(say("{} to note", count));
  }
  return parts.empty() ? said("none") : fmt::format("{}", fmt::join(parts, ", "));
}

std::string counted_bench(const VisitSheet& sheet) {
  int pieces = 0;
  for (const auto& each : sheet.bench) {
    if (each.stopped.empty()) pieces += each.quantity;
  }
  if (pieces == 0) return said("none");
  const auto words = number_words(pieces);
  return sheet.missing() == 0 ? words : say("{}, {} not on the shelf", words, sheet.missing());
}

std::vector<std::string> row_of(const VisitSheet& sheet, bool name) {
  return {sheet.patient.text, name ? sheet.name : "",
          sheet.near_end.empty() ? said("none") : number_words(std::ssize(sheet.near_end)),
          counted_findings(sheet), counted_bench(sheet)};
}

VisitSection section(const std::string& heading, int weight) {
  VisitSection made;
  made.heading = heading;
  made.weight = weight;
  return made;
}

exchange::VisitPage page_of(const VisitSheet& sheet, Date on, bool name) {
  // Weights say whose lines are left out first when a page is full: the highest.
  auto near_end = section(said("Near their end"), 2);
  for (const auto& each : sheet.near_end) near_end.lines.push_back({each.words});
  if (near_end.lines.empty()) {
    near_end.lines.push_back(
        {say("No part is forecast to be worn out or past its use-by date within {} days. Inspect "
             "worn parts all the same.",
             near_end_days.count())});
  }
  auto findings = section(said("Findings"), 1);
  for (const auto& each : sheet.findings) {
    findings.lines.push_back({fmt::format("{}: {}", visit_gravity_words(each.gravity), each.words),
                              each.gravity == care::Gravity::stops});
  }
  if (findings.lines.empty()) {
    findings.lines.push_back(
        {said("Nothing was found in the records. That does not mean that nothing is there.")});
  }
  auto bench = section(said("Have ready on the bench"), 3);
  for (const auto& each : sheet.bench) bench.lines.push_back({each.words});
  if (bench.lines.empty()) bench.lines.push_back({said("Nothing is booked or near its end.")});
  auto worn = section(said("Prostheses"), 4);
  for (const auto& words : sheet.prostheses) worn.lines.push_back({words});
  if (worn.lines.empty()) worn.lines.push_back({said("No prosthesis is recorded.")});
  auto sensitive = section(said("Sensitivities"), 1);
  for (const auto& words : sheet.sensitivities) {
    sensitive.lines.push_back({words, sheet.sensitive});
  }
  const auto title = title_of(sheet, name);
  return {title,
          say("Visit on {}: {}", day_words(on), sheet.reason),
          {std::move(worn), std::move(sensitive), std::move(findings), std::move(near_end),
           std::move(bench)},
          say("{}   visit on {}", title, date_words(on))};
}

}  // namespace

exchange::VisitPapers visit_papers(const Day& day, const VisitDay& visits, const VisitPaper& how) {
  const auto& name = day.clinic().settings.name;
  exchange::VisitPapers papers;
  papers.clinic_name = name.empty() ? said("Clinic without a name") : name;
  papers.title = say("Visits on {}", day_words(visits.on));
  papers.summary =
      say("{} From the records of {}.", visits_summary(visits), date_words(day.today()));
  papers.columns = {said("Patient"), how.names ? said("Name") : "", said("Near their end"),
                    said("Findings"), said("Pieces for the bench")};
  papers.shares = shares;
  for (const auto& sheet : visits.sheets) {
    papers.rows.push_back(row_of(sheet, how.names));
    papers.pages.push_back(page_of(sheet, visits.on, how.names));
  }
  papers.left_out = said("And {} more, see the program.");
  papers.notes = said("Notes");
  papers.cautions = {said("Dates are forecasts and spans, not promises: inspect worn parts at "
                          "every visit. What is not recorded could not be checked."),
                     care_caution()};
  papers.paper = how.paper;
  return papers;
}

Expected<int> print_visits(const Day& day, const VisitDay& visits, const VisitPaper& how,
                           const std::string& path) {
  if (visits.sheets.empty()) return 0;
  return exchange::write_visit_papers(visit_papers(day, visits, how), path);
}

std::string no_visit_words(const Day& day, Date on) {
  const auto next = next_visits(day, on);
  return next ? say("No visit is known for {}; the next is on {}.", day_words(on), day_words(*next))
              : say("No visit is known for {}.", day_words(on));
}

std::string visits_summary(const VisitDay& visits) {
  int grave = 0;
  int missing = 0;
  for (const auto& sheet : visits.sheets) {
    grave += sheet.count(care::Gravity::stops);
    missing += sheet.missing();
  }
  auto words = count_words(std::ssize(visits.sheets), "visit", "visits");
  if (grave > 0) words += say("; {} to act on", count_words(grave, "finding", "findings"));
  if (missing > 0) {
    words += say("; {} for the bench not on the shelf", count_words(missing, "piece", "pieces"));
  }
  return words + ".";
}

}  // namespace sparewell::desk
