/** A PDF of one page, just large enough to be one (ISO 32000-1, section 7.5); sizes in points. */
export function pdfText({
  width,
  height,
  content,
}: {
  width: number;
  height: number;
  content: string;
}): string {
  const objects = [
    '<< /Type /Catalog /Pages 2 0 R >>',
    '<< /Type /Pages /Kids [3 0 R] /Count 1 >>',
    `<< /Type /Page /Parent 2 0 R /MediaBox [0 0 ${width} ${height}] /Contents 4 0 R /Resources << >> >>`,
    `<< /Length ${content.length} >>\nstream\n${content}\nendstream`,
  ];
  let text = '%PDF-1.4\n';
  const starts = objects.map((object, index) => {
    const start = text.length;
    text += `${index + 1} 0 obj\n${object}\nendobj\n`;
    return start;
  });
  const table = text.length;
  const rows = starts.map((start) => `${String(start).padStart(10, '0')} 00000 n \n`).join('');
  return `${text}xref\n0 5\n0000000000 65535 f \n${rows}trailer\n<< /Size 5 /Root 1 0 R >>\nstartxref\n${table}\n%%EOF\n`;
}
