#include "billing/worklist.hpp"

#include <algorithm>
#include <map>
#include <unordered_map>

namespace sparewell::billing {
namespace {

void judge(WorkItem& item, Date today) {
  const BillingAnswer* answer = item.answer();
  if (answer == nullptr || answer->answer == Answer::open_again) return;
  if (answer->quantity != item.finding.quantity || answer->money != item.finding.money) {
    item.has_changed = true;
  } else if (answer->answer == Answer::asked) {
    const Date again = answer->ask_again_on.value_or(answer->answered_on + days{days_to_answer});
    item.ask_again = again <= today;
    if (!item.ask_again) item.state = WorkState::waiting;
  } else {
    item.state = WorkState::settled;
  }
}

void add_to(std::map<Currency, std::int64_t>& sums, const Money& money) {
  sums[money.currency] += money.minor;
}

std::vector<Money> as_list(const std::map<Currency, std::int64_t>& sums) {
  std::vector<Money> list;
  for (const auto& [currency, minor] : sums) list.push_back(Money{minor, currency});
  return list;
}

}  // namespace

std::vector<WorkItem> make_worklist(std::vector<BillingFinding> findings,
                                    std::span<const BillingAnswer> answers, Date today) {
  std::unordered_map<std::string, std::vector<BillingAnswer>> by_finding;
  for (const BillingAnswer& answer : answers) by_finding[answer.finding].push_back(answer);
  std::vector<WorkItem> items;
  items.reserve(findings.size());
  for (BillingFinding& finding : findings) {
    WorkItem& item = items.emplace_back();
    item.finding = std::move(finding);
    item.age_days = std::max(0, days_between(item.finding.since, today));
    const auto found = by_finding.find(item.finding.key);
    if (found == by_finding.end()) continue;
    item.history = found->second;
    std::ranges::sort(item.history, {}, &BillingAnswer::number);
    judge(item, today);
  }
  return items;
}

Stake stake_of(std::span<const WorkItem> items) {
  std::map<Currency, std::int64_t> receive;
  std::map<Currency, std::int64_t> give;
  Stake stake;
  for (const WorkItem& item : items) {
    const auto& money = item.finding.money;
    if (!money) {
      ++stake.without_sum;
    } else if (money->minor >= 0) {
      add_to(receive, *money);
    } else {
      add_to(give, Money{-money->minor, money->currency});
    }
  }
  stake.to_receive = as_list(receive);
  stake.to_give = as_list(give);
  return stake;
}

}  // namespace sparewell::billing
