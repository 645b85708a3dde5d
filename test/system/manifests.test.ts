import { execFileSync } from 'node:child_process';
import { readdirSync, readFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { describe, expect, it } from 'vitest';

const DEPLOY = fileURLToPath(new URL('../../deploy/', import.meta.url));

/** Whatever stands in a manifest. */
type Loose = ReturnType<typeof JSON.parse>;

/** The documents of a YAML file, by a reader that is not ours. */
function documentsOf(path: string): Loose[] {
  const read =
    'import json, sys, yaml; print(json.dumps(list(yaml.safe_load_all(open(sys.argv[1], encoding="utf-8")))))';
  return JSON.parse(execFileSync('/usr/bin/python3', ['-c', read, `${DEPLOY}${path}`], { encoding: 'utf8' }));
}

const files = readdirSync(`${DEPLOY}orchestrator`).filter((file) => file !== 'kustomization.yaml');
const manifests = files.flatMap((file) => documentsOf(`orchestrator/${file}`));
const of = (kind: string) => manifests.find((manifest) => manifest.kind === kind);

describe('the manifests for an orchestrator', () => {
  const { spec } = of('Deployment');
  const pod = spec.template.spec;
  const [container] = pod.containers;

  it('are all named by the set', () => {
    const [{ resources }] = documentsOf('orchestrator/kustomization.yaml');
    expect([...resources].sort()).toEqual([...files].sort());
    expect(manifests.map(({ kind }) => kind).sort()).toEqual(
      'ConfigMap Deployment HorizontalPodAutoscaler NetworkPolicy PodDisruptionBudget Service'.split(' '),
    );
  });

  it('fit each other: labels, ports, settings, what is scaled', () => {
    const { labels } = spec.template.metadata;
    for (const selector of [
      spec.selector.matchLabels,
      of('Service').spec.selector,
      of('PodDisruptionBudget').spec.selector.matchLabels,
      of('NetworkPolicy').spec.podSelector.matchLabels,
    ]) {
      expect(selector).toEqual(labels);
    }
    const [port] = container.ports;
    expect(of('Service').spec.ports[0].targetPort).toBe(port.name);
    expect(of('NetworkPolicy').spec.ingress[0].ports[0].port).toBe(port.name);
    expect(of('ConfigMap').data.PORT).toBe(String(port.containerPort));
    expect(container.envFrom[0].configMapRef.name).toBe(of('ConfigMap').metadata.name);
    expect(of('HorizontalPodAutoscaler').spec.scaleTargetRef.name).toBe(of('Deployment').metadata.name);
    expect(spec.replicas).toBe(of('HorizontalPodAutoscaler').spec.minReplicas);
    expect(spec.replicas).toBeGreaterThanOrEqual(2);
  });

  it('ask after life and readiness, and wait for what runs', () => {
    expect(container.startupProbe.httpGet.path).toBe('/healthz');
    expect(container.livenessProbe.httpGet.path).toBe('/healthz');
    expect(container.readinessProbe.httpGet.path).toBe('/readyz');
    expect(pod.terminationGracePeriodSeconds).toBeGreaterThan(Number(of('ConfigMap').data.STOP_DELAY) + 31);
  });

  it('hold each copy within limits and without rights', () => {
    expect(container.resources.limits.memory).toBe('1Gi');
    expect(container.securityContext).toEqual({
      allowPrivilegeEscalation: false,
      readOnlyRootFilesystem: true,
      capabilities: { drop: ['ALL'] },
    });
    expect(pod.securityContext.runAsNonRoot).toBe(true);
    expect(pod.automountServiceAccountToken).toBe(false);
    expect(of('NetworkPolicy').spec.egress).toEqual([]);
    const { version } = JSON.parse(readFileSync(`${DEPLOY}../package.json`, 'utf8'));
    expect(container.image).toBe(`gustworthy:${version}`);
  });
});

describe('the compose file', () => {
  const { gustworthy } = documentsOf('container/compose.yaml')[0].services;

  it('holds the container within limits, without rights, behind a proxy on the machine', () => {
    expect(gustworthy).toMatchObject({
      read_only: true,
      cap_drop: ['ALL'],
      security_opt: ['no-new-privileges:true'],
      ports: ['127.0.0.1:8080:8080'],
      restart: 'unless-stopped',
    });
    for (const value of Object.values(gustworthy.environment)) expect(typeof value).toBe('string');
  });
});
