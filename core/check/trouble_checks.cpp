#include "core/check/checks.h"

namespace shoulderline {

void checkTroubles(const CheckContext& context, std::vector<Finding>& findings) {
    for (const Trouble& trouble : context.resolved.troubles) {
        const bool isLimit = trouble.rule == RuleId::MeasureLimits;
        Finding finding =
            context.finding(trouble.rule, isLimit ? Severity::LookAt : Severity::MustMend);
        finding.measure = trouble.measure;
        finding.message = trouble.place + ": " + trouble.message;
        if (trouble.part) {
            for (std::size_t i = 0; i < context.resolved.parts.size(); ++i) {
                if (context.resolved.parts[i].stated == *trouble.part) {
                    finding.parts.push_back(i);
                }
            }
        }
        findings.push_back(std::move(finding));
    }
}

}  // namespace shoulderline
