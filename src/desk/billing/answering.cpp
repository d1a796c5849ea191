#include "desk/billing/answering.hpp"

#include <algorithm>

#include <fmt/format.h>

#include "clinic/say.hpp"
#include "desk/billing/finding_words.hpp"
#include "desk/wording.hpp"

namespace sparewell::desk {
namespace {

struct Given {
  int count = 0;
  std::optional<Answer> newest;
};

Given given_before(const store::Snapshot& snapshot, const std::string& finding) {
  Given given;
  for (const auto& row : snapshot.all<BillingAnswer>()) {
    if (row.record.finding != finding || row.record.number <= given.count) continue;
    given.count = row.record.number;
    given.newest = row.record.answer;
  }
  return given;
}

std::optional<Refusal> against(const AnswerRequest& request, const Given& before, Date today) {
  if (request.reason.empty()) return Refusal{said("Say why; the reason is kept with the finding.")};
  if (request.by.empty())
    return Refusal{said("Say who decides; the name is kept with the finding.")};
  if (request.ask_again_on && request.answer != Answer::asked) {
    return Refusal{
        said("A day to ask again belongs to the answer \"asked\" alone; leave it empty.")};
  }
  if (request.ask_again_on && *request.ask_again_on <= today) {
    return Refusal{say("{} is not after today; name a later day to ask again.",
                       iso_text(*request.ask_again_on))};
  }
  if (request.answer == Answer::open_again &&
      (!before.newest || *before.newest == Answer::open_again)) {
    return Refusal{said("The finding is open already; there is no answer to take back.")};
  }
  return {};
}

}  // namespace

Expected<BillingAnswer> answer_finding(store::UnitOfWork& work,
                                       const billing::BillingFinding& finding,
                                       const AnswerRequest& request, Date today) {
  const Given before = given_before(work, finding.key);
  if (auto refusal = against(request, before, today)) return refuse(std::move(refusal->sentence));
  BillingAnswer answer;
  answer.finding = finding.key;
  answer.number = before.count + 1;
  answer.answer = request.answer;
  answer.reason = request.reason;
  answer.answered_by = request.by;
  answer.answered_on = today;
  answer.quantity = finding.quantity;
  answer.money = finding.money;
  answer.ask_again_on = request.ask_again_on;
  work.put(answer);
  return answer;
}

std::string answer_words(const BillingAnswer& answer) {
  auto text = say("{} on {} by {}: {}", capitalised(shown_word(answer.answer)),
                  date_words(answer.answered_on), answer.answered_by, answer.reason);
  if (!text.ends_with('.')) text += '.';
  if (answer.ask_again_on) {
    text += say(" To be asked again on {}.", date_words(*answer.ask_again_on));
  }
  return text;
}

StockForm answer_form(const Day& day, const billing::WorkItem& item) {
  StockForm form{said("Answer a finding"),
                 {},
                 {},
                 said("&Keep"),
                 {},
                 to_say("a finding of billing was answered")};
  form.intro = fmt::format("{} {}", finding_sentence(item.finding), remedy_words(item.finding));
  std::vector<std::string> choices;
  for (const auto each : words<Answer>()) choices.emplace_back(each);
  if (item.state == billing::WorkState::open && item.answer() == nullptr) choices.pop_back();
  form.fields = {
      {said("&Answer"), choices.front(),
       said("asked: stays on the list; accepted: right as it is; corrected: the records were "
            "put right; written off: the money is given up"),
       choices, true},
      {said("&Reason"), "", said("Whom you asked, or why; it is kept")},
      {said("&By"), "", said("Who decides")},
      {said("Ask a&gain on"), "",
       said("Such as 2026-12-15, after \"asked\"; empty: in two weeks")}};
  form.book = [finding = item.finding, today = day.today()](
                  store::UnitOfWork& work,
                  const std::vector<std::string>& given) -> Expected<Booked> {
    AnswerRequest request;
    const auto answer = parse_word<Answer>(given[0]);
    if (!answer) return refuse(say("Choose what the answer is."));
    request.answer = *answer;
    request.reason = given[1];
    request.by = given[2];
    request.ask_again_on = parse_iso_date(given[3]);
    if (!given[3].empty() && !request.ask_again_on) {
      return refuse(say("'{}' is not a day; write one such as {}.", given[3], iso_text(today)));
    }
    const auto made = answer_finding(work, finding, request, today);
    if (!made) return tl::unexpected(made.error());
    Booked booked;
    booked.notes.push_back(answer_words(*made));
    return booked;
  };
  return form;
}

}  // namespace sparewell::desk
