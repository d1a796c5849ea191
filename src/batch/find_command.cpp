#include <iostream>

#include <fmt/format.h>

#include "batch/context.hpp"
#include "batch/json.hpp"
#include "desk/search/scanned.hpp"
#include "desk/search/search_index.hpp"

namespace sparewell::batch {
namespace {

/// What a scanned label names, or what answers to typed words.
desk::Hits found(const desk::SearchIndex& index, const std::string& typed, std::size_t most,
                 std::string& label_words) {
  if (desk::looks_scanned(typed)) {
    auto scanned = desk::where_label_leads(index.day(), typed);
    label_words = scanned ? scanned->doubt : scanned.error().sentence;
    if (scanned) return {std::move(scanned->hits), 0};
  }
  return index.find(typed, most);
}

Json json_of_hit(const desk::Hit& hit) {
  Json json{{"kind", desk::hit_kind_words(hit.kind)}, {"found", hit.title}};
  json["belongs_to"] = hit.context;
  const auto& there = hit.there;
  if (!there.patient.empty()) json["patient_ref"] = there.patient.text;
  if (!there.item.empty()) json["item_code"] = there.item.text;
  if (!there.lot.empty()) json["lot"] = there.lot;
  if (there.order) json["order_ref"] = there.order->ref;
  return json;
}

int run(const Context& context, const std::string& typed, int most) {
  const auto today = context.today();
  const desk::SearchIndex index{
      std::make_shared<const desk::Day>(desk::records_only(context.clinic_on(today), today))};
  std::string label_words;
  const auto hits = found(index, typed, static_cast<std::size_t>(most), label_words);
  if (context.json) {
    Json list = Json::array();
    for (const auto& hit : hits.hits) list.push_back(json_of_hit(hit));
    print({{"hits", list}, {"more", hits.more}, {"label", label_words}});
  } else {
    for (const auto& hit : hits.hits) {
      std::cout << fmt::format("{}: {}; {}\n", desk::hit_kind_words(hit.kind), hit.title,
                               hit.context);
    }
    if (hits.more > 0) std::cout << fmt::format("and {} more: name more words\n", hits.more);
    if (!label_words.empty()) std::cout << label_words << '\n';
  }
  if (hits.hits.empty() && label_words.empty() && !context.json) {
    std::cout << fmt::format("Nothing answers to '{}'.\n", typed);
  }
  return hits.hits.empty() ? done_with_findings : done;
}

}  // namespace

void add_find(Command& app, Context& context) {
  auto* command = app.add_subcommand(
      "find", "Find a patient, part, item, lot, order, claim or invoice, or what a label names");
  const auto typed = std::make_shared<std::string>();
  const auto most = std::make_shared<int>(40);
  command->add_option("text", *typed, "Words or numbers, or what a scanner sends")->required();
  command->add_option("--most", *most, "How many are listed")->within(1, 100000);
  command->callback([&context, typed, most] {
    context.run = [&context, typed, most] { return run(context, *typed, *most); };
  });
}

}  // namespace sparewell::batch
